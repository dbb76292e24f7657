import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { allDrafts, patternFile } from '../../demo-data/drafting/all.ts'
import { ringsArea, ringsDifference } from '../../src/core/geometry/clipper.ts'
import { polygonArea } from '../../src/core/geometry/polygon.ts'
import { polygonIsSimple } from '../../src/core/geometry/simple.ts'
import { piecesOf } from '../../src/core/patterns/pieces-of.ts'
import { seamLine } from '../../src/core/patterns/seam-line.ts'
import { readPattern } from '../../src/readers/model/pattern.ts'
import { cautions } from '../../src/ui/words/en/shell.ts'

const FOLDER = new URL('../../demo-data/patterns/', import.meta.url)
const DRAFTS = allDrafts()

function fileText(id: string): string {
  return readFileSync(new URL(`${id}.json`, FOLDER), 'utf8')
}

describe('shipped patterns', () => {
  it('are those that are drafted', () => {
    const files = readdirSync(FOLDER).sort()
    expect(files).toEqual(DRAFTS.map(({ id }) => `${id}.json`).sort())
  })

  describe.each(DRAFTS.map((pattern) => [pattern.id, pattern] as const))('%s', (id, pattern) => {
    it('is on disk as it is drafted (npx tsx demo-data/drafting/write.ts)', () => {
      expect(fileText(id)).toBe(patternFile(pattern))
    })

    it('passes the gate for foreign patterns unchanged', () => {
      const json = JSON.parse(fileText(id))
      expect(readPattern(json)).toEqual({ ok: true, value: json })
    })

    it('comes in four sizes or more, with a choice of versions', () => {
      expect(pattern.sizes.length).toBeGreaterThanOrEqual(4)
      expect(pattern.versions.length).toBeGreaterThanOrEqual(2)
      const used = new Set(pattern.versions.flatMap(({ pieces }) => pieces))
      expect(pattern.pieces.filter((piece) => !used.has(piece.id))).toEqual([])
    })

    it('names cautions that have words', () => {
      expect(pattern.cautions).toEqual(expect.arrayContaining(['unwashed', 'blades']))
      expect(pattern.cautions.filter((caution) => !(caution in cautions))).toEqual([])
    })

    it.each(pattern.sizes)('has sane cut outlines in size %s, round their seam lines', (size) => {
      for (const version of pattern.versions) {
        const pieces = piecesOf(pattern, version.id, size)
        expect(pieces.ok).toBe(true)
        for (const { shape, outline } of pieces.ok ? pieces.value : []) {
          expect(polygonIsSimple(outline)).toBe(true)
          expect(polygonArea(outline)).toBeGreaterThan(1000)
          expect(outline.length).toBeLessThan(150)
          expect(ringsArea(ringsDifference([seamLine(shape)], [outline]))).toBeLessThan(0.1)
        }
      }
    })

    it('never shrinks from one size to the next, and grows over all', () => {
      for (const piece of pattern.pieces) {
        const areas = pattern.sizes.map((size) => polygonArea(seamLine(piece.shapes[size] as never)))
        expect(areas, piece.id).toEqual([...areas].sort((a, b) => a - b))
      }
      const [first, last] = [pattern.sizes[0], pattern.sizes.at(-1)].map((size) =>
        pattern.pieces.reduce(
          (sum, piece) => sum + polygonArea(seamLine(piece.shapes[size as string] as never)),
          0,
        ),
      )
      expect(last).toBeGreaterThan(first as number)
    })
  })
})
