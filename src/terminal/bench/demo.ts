import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Result } from '../../core/base/result.ts'
import type { Garment } from '../../core/garments/index.ts'
import type { Pattern } from '../../core/patterns/index.ts'
import type { CheckQuestion } from '../../core/planning/check.ts'
import { readGarment } from '../../readers/model/garment.ts'
import { readPattern } from '../../readers/model/pattern.ts'

const FOLDER = fileURLToPath(new URL('../../../demo-data/', import.meta.url))

export function demoPatterns(): Pattern[] {
  return read('patterns', readPattern)
}

export function demoGarments(): Garment[] {
  return read('garments', readGarment)
}

function read<T>(folder: string, reader: (json: unknown) => Result<T>): T[] {
  const files = readdirSync(join(FOLDER, folder)).sort()
  return files.map((file) => {
    const result = reader(JSON.parse(readFileSync(join(FOLDER, folder, file), 'utf8')))
    if (!result.ok) throw new Error(`${file}: ${JSON.stringify(result.faults)}`)
    return result.value
  })
}

/**
 * Shop checks of every demo garment against every version of every demo pattern: in every size, or (`sample`) in one
 * size each, sizes taken by turns.
 */
export function demoQuestions(sample: boolean): CheckQuestion[] {
  const patterns = demoPatterns()
  const questions: CheckQuestion[] = []
  for (const garment of demoGarments())
    for (const pattern of patterns)
      for (const version of pattern.versions) {
        const { sizes } = pattern
        const asked = sample ? [sizes[questions.length % sizes.length] as string] : sizes
        for (const size of asked)
          questions.push({ pattern, version: version.id, size, garment, roles: null, clearance: 0 })
      }
  return questions
}
