import { describe, expect, it } from 'vitest'
import { reasonText } from '../../../src/core/planning/reason-text.ts'

const text = (kind: string, pieces: string[], figures: Record<string, number> = {}) =>
  reasonText(
    { kind, pieces, figures },
    (id) => id.toUpperCase(),
    (mm) => `${mm / 10} cm`,
  )

describe('a reason in one sentence', () => {
  it.each([
    [
      text('stretch', ['front'], { needsAcross: 50, needsAlong: 0, mostAcross: 30, mostAlong: 20 }),
      '“FRONT” needs cloth that stretches 50 % across and 0 % along, and what there is stretches at most 30 % across and 20 % along.',
    ],
    [
      text('stretch', ['front'], { needsAcross: 50, needsAlong: 0 }),
      '“FRONT” needs cloth that stretches 50 % across and 0 % along, and no panel that it may lie on has had its stretch measured.',
    ],
    [text('surface', ['tie']), '“TIE” cannot point its head up the pile in any of its turns.'],
    [text('cloth', ['tie']), 'No panel is of the cloth that “TIE” is cut from.'],
    [
      text('area', ['a', 'b'], { needed: 1040, available: 1000 }),
      '“A” and “B” need 4 % more cloth than there is where they can lie.',
    ],
    [
      text('area', ['a'], { needed: 1000.01, available: 1000 }),
      '“A” needs a hair more cloth than there is where they can lie.',
    ],
    [
      text('piece', ['leg'], { longest: 900, room: 700 }),
      '“LEG” is 90 cm long, and nowhere is there more than 70 cm for it.',
    ],
    [text('piece', ['leg']), '“LEG” fits on no panel by itself, in any turn it may take.'],
    [
      text('piece', ['back'], { along: 412, run: 380 }),
      '“BACK” needs 41.2 cm along the grain; the longest clear run is 38 cm.',
    ],
    [
      text('piece', ['back'], { across: 412, run: 380, width: 90 }),
      '“BACK” needs 41.2 cm across the grain; the longest clear run that is wide enough is 38 cm.',
    ],
    [
      text('group', ['sleeve'], { copies: 2, across: 412, widest: 380, along: 900, longest: 700 }),
      'Two of “SLEEVE” need 41.2 cm side by side and 90 cm one above the other; the panel is at most 38 cm wide and 70 cm long.',
    ],
    [text('group', ['cup'], { copies: 3 }), 'There is no way to place 3 of “CUP” together.'],
    [text('group', ['a', 'b', 'c'], { copies: 3 }), 'There is no way to place “A”, “B” and “C” together.'],
    [text('group', ['a'], { copies: 5, most: 4 }), 'At most 4 of the 5 copies of “A” find room together.'],
    [
      text('area', ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'], { needed: 3, available: 2 }),
      '“A”, “B”, “C”, “D”, “E” and 3 other pieces need 50 % more cloth than there is where they can lie.',
    ],
  ])('%s', (made, expected) => {
    expect(made).toBe(expected)
  })
})
