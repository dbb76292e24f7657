import type { ServerResponse } from 'node:http'
import { setTimeout as pause } from 'node:timers/promises'
import type { HostOptions } from './host.ts'

/** Bytes that go out in one go: small enough that files under way at once share the link. */
const CHUNK = 4096

/** A link between host and phone: every answer begins after the latency, and all bodies share the bandwidth. */
export interface Link {
  readonly latencyMs: number
  readonly bytesPerSecond: number
}

/**
 * How a host answers over such a link. It is slowed down here and not in the browser, for there a service worker's
 * requests are not those of the page.
 */
export function slowLink({ latencyMs, bytesPerSecond }: Link): Required<HostOptions> {
  let freeAt = 0
  const turn = async (bytes: number): Promise<void> => {
    const now = performance.now()
    freeAt = Math.max(now, freeAt) + (1000 * bytes) / bytesPerSecond
    await pause(freeAt - now)
  }
  return {
    before: () => pause(latencyMs),
    send: async (answer: ServerResponse, body: Buffer) => {
      for (let at = 0; at < body.length; at += CHUNK) {
        const chunk = body.subarray(at, at + CHUNK)
        await turn(chunk.length)
        if (answer.destroyed) return
        answer.write(chunk)
      }
      answer.end()
    },
  }
}
