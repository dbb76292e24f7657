import { describe, expect, it } from 'vitest'
import { lookForGate } from '../../../src/ui/state/look-for-gate.ts'
import {
  EMPTY_LIST,
  type Figures,
  type LookedFor,
  missingKinds,
  withFigures,
  withThing,
} from '../../../src/ui/state/look-for-list.ts'

const thing = (id: string, more: Partial<LookedFor> = {}): LookedFor => ({
  id,
  pattern: id,
  version: 'plain',
  size: 'M',
  role: null,
  title: id,
  detail: 'size M',
  given: '',
  figures: [],
  ...more,
})

const figures = (kind: Figures['kind'], width: number): Figures => ({
  kind,
  stretch: { across: 30, along: 0 },
  enough: [{ width, length: 600 }],
  tooSmall: [],
  none: false,
  oneWay: true,
  label: 'M',
})

describe('the list of what to look for', () => {
  it('takes a thing once: asked for again it comes to the top with the figures it has', () => {
    const known = thing('bib', { given: 'now', figures: [figures('dress', 500)] })
    const list = { ...EMPTY_LIST, things: [thing('hat'), known] }
    expect(withThing(list, thing('other', { pattern: 'bib' })).things).toEqual([known, thing('hat')])
    const large = thing('large', { pattern: 'bib', size: 'L' })
    expect(withThing(list, large).things).toEqual([large, thing('hat'), known])
  })

  it('keeps the figures of other kinds, but none that hang on something else', () => {
    const list = { ...EMPTY_LIST, things: [thing('bib', { given: 'now', figures: [figures('dress', 500)] })] }
    const kept = withFigures(list, 'bib', 'now', figures('t-shirt', 520)).things[0]!
    expect(kept.figures).toEqual([figures('dress', 500), figures('t-shirt', 520)])
    const anew = withFigures(list, 'bib', 'inches', figures('t-shirt', 530)).things[0]!
    expect(anew).toMatchObject({ given: 'inches', figures: [figures('t-shirt', 530)] })
    expect(missingKinds(kept, ['t-shirt', 'trousers'], 'now')).toEqual(['trousers'])
    expect(missingKinds(kept, ['t-shirt', 'trousers'], 'inches')).toEqual(['t-shirt', 'trousers'])
  })

  it('comes back from the store; figures of another make are worked out again, anything else is refused', () => {
    const list = { ...EMPTY_LIST, things: [thing('bib', { given: 'now', figures: [figures('dress', 500)] })] }
    expect(lookForGate(JSON.parse(JSON.stringify(list)))).toEqual({ ok: true, value: list })
    const old = { ...list, things: [{ ...list.things[0], figures: [{ kind: 'dress', least: 500 }] }] }
    expect(lookForGate(old)).toMatchObject({ ok: true, value: { things: [{ title: 'bib', figures: [] }] } })
    expect(lookForGate({ things: 'none' }).ok).toBe(false)
  })
})
