import { createHash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { extname, join, normalize } from 'node:path'
import { gzipSync } from 'node:zlib'

export interface HostOptions {
  /** Waited for before an answer begins; `path` is the file asked for, as `assets/a.js`. Its rejection is answered with 500. */
  readonly before?: (path: string, request: IncomingMessage) => Promise<void>
  /** Sends the body, and ends the answer. Absent: all at once. */
  readonly send?: (answer: ServerResponse, body: Buffer) => Promise<void>
}

export interface Host {
  /** With a slash at its end. */
  readonly address: string
  close(): Promise<void>
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.md': 'text/plain; charset=utf-8',
}

/** Files of these kinds are compressed already. */
const PACKED = new Set(['.png'])

/** Serves a folder on a free port of this machine as static hosts do: gzipped, and asked anew for each file whether it has changed. */
export async function serveFolder(folder: string, options: HostOptions = {}): Promise<Host> {
  const server = createServer((request, answer) => {
    respond(folder, options, request, answer).catch(() => answer.writeHead(500).end())
  })
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening))
  const { port } = server.address() as AddressInfo
  return {
    address: `http://localhost:${port}/`,
    close: () =>
      new Promise((closed) => {
        server.close(() => closed())
        server.closeAllConnections()
      }),
  }
}

async function respond(
  folder: string,
  { before, send = sendAtOnce }: HostOptions,
  request: IncomingMessage,
  answer: ServerResponse,
): Promise<void> {
  const asked = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://host').pathname)).slice(1)
  const path = asked === '' ? 'index.html' : asked
  await before?.(path, request)
  const file = await readFile(join(folder, path)).catch(() => null)
  if (file === null) {
    answer.writeHead(404).end()
    return
  }
  const tag = `"${createHash('sha1').update(file).digest('base64url')}"`
  const kind = extname(path)
  const headers = { 'content-type': TYPES[kind] ?? 'text/plain', etag: tag, 'cache-control': 'no-cache' }
  if (request.headers['if-none-match'] === tag) {
    answer.writeHead(304, headers).end()
    return
  }
  const body = PACKED.has(kind) ? file : gzipSync(file, { level: 9 })
  answer.writeHead(200, {
    ...headers,
    'content-length': body.length,
    ...(body !== file && { 'content-encoding': 'gzip' }),
  })
  await send(answer, body)
}

async function sendAtOnce(answer: ServerResponse, body: Buffer): Promise<void> {
  answer.end(body)
}
