import { describe, expect, it } from 'vitest'
import { backupIsDue, isPutOff } from '../../../src/ui/state/backup-due.ts'

const DAY = 86_400_000
const due = (
  backedUpAt: number | null,
  firstKeptAt: number | null,
  lastChangedAt: number | null,
  day: number,
) => backupIsDue({ backedUpAt, firstKeptAt, lastChangedAt }, day * DAY)

describe('the reminder of backing up', () => {
  it('comes two weeks after the first thing was kept, if there was never a backup', () => {
    expect(due(null, null, null, 100)).toBe(false)
    expect(due(null, 0, 0, 13)).toBe(false)
    expect(due(null, 0, 0, 14)).toBe(true)
  })

  it('comes a month after the last backup, if something has changed since', () => {
    expect(due(DAY, 0, 2 * DAY, 30)).toBe(false)
    expect(due(DAY, 0, 2 * DAY, 31)).toBe(true)
    expect(due(2 * DAY, 0, DAY, 100)).toBe(false)
  })

  it('keeps quiet for a week once it is put off, and not for ever when the clock is set back', () => {
    expect(isPutOff(null, 0)).toBe(false)
    expect(isPutOff(DAY, DAY)).toBe(true)
    expect(isPutOff(DAY, 8 * DAY - 1)).toBe(true)
    expect(isPutOff(DAY, 8 * DAY)).toBe(false)
    expect(isPutOff(100 * DAY, DAY)).toBe(false)
  })
})
