import { execFile } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { laySchema } from '../../src/readers/problem-file/lay-schema.ts'
import { runLay } from '../../src/terminal/run-lay.ts'
import { type LayFile, layFaults } from '../support/lay-checker.ts'

let folder: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'lay-'))
})
afterAll(() => rmSync(folder, { recursive: true }))

const square = (side: number) => [
  [0, 0],
  [side, 0],
  [side, side],
  [0, side],
]
const panel = { id: 'front', outline: square(300) }
const piece = { id: 'pocket', outline: square(100), count: 4 }
const fits = { format: 'cutworth-problem/1', panels: [panel], pieces: [piece] }
const cannot = { ...fits, pieces: [{ ...piece, count: 10 }] }

function fileOf(content: unknown, name = 'problem.json'): string {
  const file = join(folder, name)
  writeFileSync(file, typeof content === 'string' ? content : JSON.stringify(content))
  return file
}

/** Runs the command in this process. */
async function lay(...words: string[]) {
  let out = ''
  let err = ''
  const code = await runLay(words, Date.now(), {
    out: (text) => {
      out += text
    },
    err: (text) => {
      err += text
    },
  })
  return { code, out, err }
}

describe('lay', () => {
  it('answers fits with 0 and a lay on standard output', async () => {
    const { code, out, err } = await lay(fileOf(fits))
    expect({ code, err }).toEqual({ code: 0, err: '' })
    const answer = laySchema.parse(JSON.parse(out)) as unknown as LayFile
    expect(answer.verdict).toBe('fits')
    expect(layFaults(fits as never, answer)).toEqual([])
  })

  it('answers cannot with 3 and the reason', async () => {
    const { code, out } = await lay(fileOf(cannot))
    expect(code).toBe(3)
    expect(JSON.parse(out)).toMatchObject({
      verdict: 'cannot',
      reason: { kind: 'area', pieces: ['pocket'] },
      spare: null,
    })
  })

  it('answers not-found with 4 when time is up, within the time', async () => {
    // Eleven unit squares in a square of side 3.87: open (best known 3.8771, Friedman's survey), so never decided.
    const open = {
      ...fits,
      panels: [{ id: 'front', outline: square(387) }],
      pieces: [{ ...piece, count: 11, grain: 'any' }],
    }
    const start = Date.now()
    const { code, out } = await lay(fileOf(open), '--seconds', '1.5')
    expect(code).toBe(4)
    expect(JSON.parse(out)).toMatchObject({ verdict: 'not-found', reason: null, spare: null })
    expect(Date.now() - start).toBeLessThan(15_000)
  }, 30_000)

  it('writes the lay and its drawing where asked, and nothing on standard output', async () => {
    const [outFile, svgFile] = [join(folder, 'lay.json'), join(folder, 'lay.svg')]
    const named = { ...fits, name: 'Bags & <b>', pieces: [{ ...piece, id: 'a "b"' }] }
    const { code, out } = await lay(fileOf(named), '--out', outFile, '--svg', svgFile)
    expect({ code, out }).toEqual({ code: 0, out: '' })
    expect(laySchema.safeParse(JSON.parse(readFileSync(outFile, 'utf8'))).success).toBe(true)
    const svg = readFileSync(svgFile, 'utf8')
    expect(svg).toContain('<title>Bags &amp; &lt;b&gt;: fits</title>')
    expect(svg).toContain('a &quot;b&quot; 4')
    expect(svg.match(/class="piece"/g)).toHaveLength(4)
    expect(svg).toMatch(/width="[\d.]+mm"/)
  })

  it('draws finished edges and motifs', async () => {
    const svgFile = join(folder, 'kept.svg')
    const motifs = [{ id: 'rose', outline: square(20) }]
    const kept = {
      ...fits,
      panels: [{ ...panel, finished: [0], motifs }],
      pieces: [{ ...piece, count: 1, sit: { edge: 0 }, shows: { motif: 'rose', at: [10, 10], within: 0 } }],
    }
    const { code } = await lay(fileOf(kept), '--svg', svgFile)
    expect(code).toBe(0)
    const svg = readFileSync(svgFile, 'utf8')
    expect(svg.match(/<line class="finished"/g)).toHaveLength(1)
    expect(svg).toMatch(/<polygon class="motif"[^>]*><title>rose</)
  })

  it('gives the same lay for the same seed', async () => {
    const file = fileOf(fits)
    const placed = async (seed: string) => JSON.parse((await lay(file, '--seed', seed)).out).placements
    expect(await placed('7')).toEqual(await placed('7'))
  })
})

describe('bad input ends with 2, says what is wrong in one line and writes nothing', () => {
  it.each<[string, unknown, string | RegExp]>([
    ['no JSON', '{ "format": ', /^document: is not JSON: .+\n$/],
    ['another format', { ...fits, format: 'cutworth-lay/1' }, 'format: must be “cutworth-problem/1”\n'],
    ['no pieces', { ...fits, pieces: [] }, 'pieces: must not be empty\n'],
    [
      'a crossing outline',
      {
        ...fits,
        pieces: [
          piece,
          {
            ...piece,
            id: 'b',
            outline: [
              [0, 0],
              [9, 9],
              [9, 0],
              [0, 9],
            ],
          },
        ],
      },
      'pieces[1].outline: edges 0 and 2 cross\n',
    ],
    [
      'two points',
      {
        ...fits,
        panels: [
          {
            ...panel,
            outline: [
              [0, 0],
              [1, 1],
            ],
          },
        ],
      },
      'panels[0].outline: must have at least 3 points, and has 2\n',
    ],
    [
      'an odd pair',
      { ...fits, pieces: [{ ...piece, count: 3, mirror: 'pairs' }] },
      /^pieces\[0\]\.count: must be even/,
    ],
    [
      'an unknown grain',
      { ...fits, pieces: [{ ...piece, grain: 'sideways' }] },
      /^pieces\[0\]\.grain: must be “along” or /,
    ],
    [
      'a typing slip',
      { ...fits, pieces: [{ ...piece, outlne: [] }] },
      'pieces[0].outlne: is not known here; remove it\n',
    ],
    [
      'the same panel twice',
      { ...fits, panels: [panel, panel] },
      /^panels\[1\]\.id: must differ from every other id/,
    ],
    ['a negative clearance', { ...fits, clearance: -2 }, 'clearance: must be at least 0\n'],
    [
      'an infinite figure',
      JSON.stringify(fits).replace('300', '1e999'),
      /^panels\[0\]\.outline\[1\]\[0\]: must be a finite number\n$/,
    ],
  ])('%s', async (_, content, expected) => {
    const { code, out, err } = await lay(fileOf(content, 'broken.json'))
    expect({ code, out }).toEqual({ code: 2, out: '' })
    if (typeof expected === 'string') expect(err).toBe(expected)
    else expect(err).toMatch(expected)
    expect(err.trimEnd().split('\n')).toHaveLength(1)
  })

  it.each<[string[], RegExp]>([
    [[], /^PROBLEM\.json: must be one file, and 0 are given/],
    [['no-such-file.json'], /^no-such-file\.json: cannot be read: /],
    [['a.json', '--sedc', '3'], /^--sedc: is not known/],
    [['a.json', '--seconds'], /^--seconds: needs a value\n$/],
    [['a.json', '--seconds', '--seed', '3'], /^--seconds: needs a value\n$/],
    [['a.json', '--seconds', 'soon'], /^--seconds: must be a number from /],
    [['a.json', '--workers', '1.5'], /^--workers: must be a whole number from 1 to /],
    [['a.json', '--seed', '-1'], /^--seed: must be a whole number from 0 to /],
    [['a.json', '--out', 'x', '--out', 'y'], /^--out: is given twice\n$/],
  ])('lay %j', async (words, expected) => {
    const { code, out, err } = await lay(...words)
    expect({ code, out }).toEqual({ code: 2, out: '' })
    expect(err).toMatch(expected)
  })

  it('a file that cannot be written', async () => {
    const nowhere = join(folder, 'no-such-folder', 'lay.json')
    const { code, out, err } = await lay(fileOf(fits), '--out', nowhere)
    expect({ code, out }).toEqual({ code: 2, out: '' })
    expect(err).toMatch(/lay\.json: cannot be written: /)
  })
})

/** Runs the command as a person does. */
function spawned(...words: string[]): Promise<{ code: number; out: string; err: string }> {
  const command = ['--import', 'tsx', 'src/terminal/lay.ts', ...words]
  return new Promise((resolve) => {
    execFile(process.execPath, command, (error, out, err) => {
      resolve({ code: error ? Number(error.code) : 0, out, err })
    })
  })
}

describe('the process', () => {
  /** The seconds begin when the process does, and a busy machine takes long to start one. */
  const PATIENT = ['--seconds', '600']

  it('exits with the verdict, from several workers too', async () => {
    const file = fileOf(cannot, 'cannot.json')
    const [alone, together, broken] = await Promise.all([
      spawned(file, ...PATIENT),
      spawned(fileOf(fits, 'fits.json'), '--workers', '2', ...PATIENT),
      spawned(fileOf('[]', 'list.json')),
    ])
    expect(alone).toMatchObject({ code: 3, err: '' })
    expect(together).toMatchObject({ code: 0, err: '' })
    expect(JSON.parse(together.out)).toMatchObject({ verdict: 'fits' })
    expect(broken).toEqual({ code: 2, out: '', err: 'document: must be an object\n' })
  })
})
