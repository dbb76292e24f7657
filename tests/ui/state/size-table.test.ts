import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { CheckAnswer } from '../../../src/core/planning/check.ts'
import type { Lay } from '../../../src/core/planning/lay.ts'
import { solvers } from '../../../src/ui/state/answers.ts'
import { draft } from '../../../src/ui/state/check-state.ts'
import { patternShelf } from '../../../src/ui/state/patterns-state.ts'
import { cellKey, fillTable, stopTable, table } from '../../../src/ui/state/size-table.ts'
import { testDraft, testPattern } from '../../support/check-draft.ts'
import { type FakeWorker, stubWorkers } from '../../support/fake-worker.ts'

// The page's pool counts the cores as it is made, which is when it is imported.
vi.hoisted(() => vi.stubGlobal('navigator', { hardwareConcurrency: 1 }))

let workers: FakeWorker[]

beforeEach(() => {
  workers = stubWorkers()
  patternShelf.put({ ...testPattern(), versions: testPattern().versions.slice(0, 1) })
  draft.value = testDraft({ size: 'S' })
})

afterEach(() => {
  stopTable()
  solvers.close()
})

function found(spare: number): Lay {
  const placed = { piece: 'side', copy: 1, panel: 'cloth', turn: 0, mirrored: false, x: 0, y: 0 }
  return {
    verdict: 'fits',
    placements: [placed],
    reason: null,
    leftOut: [],
    spare,
    spareIs: 'found',
    elapsedMs: 1,
  }
}

const answer = (lay: Lay) => ({
  ok: true as const,
  value: { problem: {}, lay, heads: 'up' } as unknown as CheckAnswer,
})
const asked = () => workers.flatMap((worker) => worker.asked)
const settle = () => new Promise((resolve) => setTimeout(resolve))
const spares = () =>
  ['S', 'M'].map((size) => {
    const cell = table.value.get(cellKey({ version: 'plain', size }))
    return cell && 'lay' in cell ? cell.lay.spare : (cell?.state ?? null)
  })

async function say(said: Parameters<FakeWorker['say']>[0]): Promise<void> {
  workers.at(-1)?.say(said)
  await settle()
}

describe('the table of sizes', () => {
  it('corrects a smaller size before it shows a larger one that has more to spare', async () => {
    const filled = fillTable()
    await settle()
    await say({ type: 'done', answer: answer(found(5)) })
    expect(spares()).toEqual([5, 'running'])
    await say({ type: 'done', answer: answer(found(12)) })
    expect(spares()).toEqual([5, 'running'])
    expect(asked().at(-1)).toMatchObject({
      kind: 'spare',
      asks: { lay: { spare: 5 } },
      limits: { known: [{ lay: { spare: 12 } }] },
    })
    await say({ type: 'done', answer: found(14) })
    await filled
    expect(spares()).toEqual([14, 12])
    // What was tried for a larger one is not tried again.
    const before = asked().length
    await fillTable()
    expect(asked()).toHaveLength(before)
    expect(spares()).toEqual([14, 12])
  })

  it('tries once only, where less is all that is found', async () => {
    draft.value = testDraft({ size: 'S', measures: { 'cloth-width': 900, 'cloth-length': 700 } })
    const filled = fillTable()
    await settle()
    await say({ type: 'done', answer: answer(found(5)) })
    await say({ type: 'done', answer: answer(found(12)) })
    await say({ type: 'done', answer: found(7) })
    await filled
    const before = asked().length
    await fillTable()
    expect(asked()).toHaveLength(before)
    expect(spares()).toEqual([7, 12])
  })
})
