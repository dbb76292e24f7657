import { describe, expect, it } from 'vitest'
import {
  type ClothRule,
  type CopySide,
  type PanelCloth,
  turnsOn,
  waysOn,
} from '../../../src/core/cloth/turns.ts'

const woven: PanelCloth = { stretch: null, surface: 'plain', faces: 1, cloth: null }
const velvet: PanelCloth = { ...woven, surface: 'one-way' }
const jersey: PanelCloth = { ...woven, stretch: { across: 60, along: 20 } }
const swimKnit: PanelCloth = { ...woven, stretch: { across: 80, along: 60 } }

const piece: ClothRule = {
  grain: 'along',
  turns: null,
  tilt: 0,
  needs: { across: 0, along: 0 },
  surface: 'as-panel',
  cloth: null,
}
const around = { across: 50, along: 0 }
const upAndDown = { across: 0, along: 50 }
const bothWays = { across: 50, along: 50 }

/** Turns as a sewist reads them: `0`, `90`, `0±3`, `any`, or why there is none. */
function read(rule: Partial<ClothRule>, panel: PanelCloth): string {
  const turns = turnsOn({ ...piece, ...rule }, panel)
  if (typeof turns === 'string') return turns
  return turns
    .map(({ turn, tilt }) => (tilt === 180 ? 'any' : tilt === 0 ? `${turn}` : `${turn}±${tilt}`))
    .join(' ')
}

describe('turns allowed', () => {
  it.each<[string, Partial<ClothRule>, PanelCloth, string]>([
    // On plain cloth the grain alone decides.
    ['along the grain', { grain: 'along' }, woven, '0 180'],
    ['along or across', { grain: 'either' }, woven, '0 90 180 270'],
    ['on the bias', { grain: 'bias' }, woven, '45 135 225 315'],
    ['anyhow', { grain: 'any' }, woven, 'any'],
    ['along, a little off', { grain: 'along', tilt: 3 }, woven, '0±3 180±3'],
    ['its own turns instead', { turns: [30, -90, 270, 390] }, woven, '30 270'],
    ['its own turns, a little off', { turns: [30], tilt: 2 }, woven, '30±2'],
    // Pile, nap and one-way prints: heads up.
    ['along, on velvet', { grain: 'along' }, velvet, '0'],
    ['along, a little off, on velvet', { grain: 'along', tilt: 3 }, velvet, '0±3'],
    ['along or across, on velvet', { grain: 'either' }, velvet, '0'],
    ['on the bias, on velvet', { grain: 'bias' }, velvet, 'surface'],
    ['anyhow, on velvet', { grain: 'any' }, velvet, '0'],
    ['anyhow, a little off, on velvet', { grain: 'any', tilt: 5 }, velvet, '0±5'],
    ['upside down only, on velvet', { turns: [180] }, velvet, 'surface'],
    ['its own turns, on velvet', { turns: [0, 90, 180] }, velvet, '0'],
    ['its own turn 4 off, 5 allowed, on velvet', { turns: [4], tilt: 5 }, velvet, '2±3'],
    ['its own turn 356, 5 allowed, on velvet', { turns: [356], tilt: 5 }, velvet, '358±3'],
    ['its own turn 10, 5 allowed, on velvet', { turns: [10], tilt: 5 }, velvet, '5'],
    ['its own turn 12, 5 allowed, on velvet', { turns: [12], tilt: 5 }, velvet, 'surface'],
    ['a facing that nobody sees, on velvet', { surface: 'any' }, velvet, '0 180'],
    // Stretch: a quarter turn swaps the two figures.
    ['stretch around, jersey', { needs: around }, jersey, '0 180'],
    ['stretch up and down, jersey', { needs: upAndDown }, jersey, 'stretch'],
    ['stretch up and down, may lie across', { needs: upAndDown, grain: 'either' }, jersey, '90 270'],
    ['stretch around, may lie across', { needs: around, grain: 'either' }, jersey, '0 180'],
    ['stretch both ways, jersey', { needs: bothWays, grain: 'either' }, jersey, 'stretch'],
    ['stretch both ways, swim knit', { needs: bothWays, grain: 'either' }, swimKnit, '0 90 180 270'],
    ['stretch around, on the bias', { needs: around, grain: 'bias' }, jersey, 'stretch'],
    [
      'a little stretch, on the bias',
      { needs: { across: 20, along: 10 }, grain: 'bias' },
      jersey,
      '45 135 225 315',
    ],
    ['stretch around, anyhow', { needs: around, grain: 'any' }, jersey, '0 180'],
    ['stretch up and down, anyhow', { needs: upAndDown, grain: 'any' }, jersey, '90 270'],
    ['stretch both ways, anyhow', { needs: bothWays, grain: 'any' }, swimKnit, 'any'],
    // Within the tilt of a quarter the cloth counts as held at that quarter.
    ['stretch around, a little off', { needs: around, tilt: 3 }, jersey, '0±3 180±3'],
    [
      'stretch around, or across, a little off',
      { needs: around, grain: 'either', tilt: 3 },
      jersey,
      '0±3 180±3',
    ],
    ['stretch up and down, a little off', { needs: upAndDown, tilt: 3 }, jersey, 'stretch'],
    ['stretch both ways, a little off', { needs: bothWays, tilt: 3 }, swimKnit, '0±3 180±3'],
    [
      'own turn 87, 5 off, may use the quarter',
      { needs: upAndDown, turns: [87], tilt: 5 },
      jersey,
      '88.5±3.5',
    ],
    [
      'own turn 93, 5 off, may use the quarter',
      { needs: upAndDown, turns: [93], tilt: 5 },
      jersey,
      '91.5±3.5',
    ],
    ['own turn 355, 10 off', { needs: around, turns: [355], tilt: 10 }, jersey, '357.5±7.5'],
    ['own turn 10, 5 off, only its end', { needs: around, turns: [10], tilt: 5 }, jersey, '5'],
    ['own turn 12, 5 off, no quarter', { needs: around, turns: [12], tilt: 5 }, jersey, 'stretch'],
    ['stretch around, anyhow, a little off', { needs: around, grain: 'any', tilt: 5 }, jersey, '0±5 180±5'],
    [
      'stretch up and down, anyhow, a little off',
      { needs: upAndDown, grain: 'any', tilt: 5 },
      jersey,
      '90±5 270±5',
    ],
    [
      'stretch around, on the bias, a little off',
      { needs: around, grain: 'bias', tilt: 10 },
      jersey,
      'stretch',
    ],
    [
      'stretch around, a little off, on a pile',
      { needs: around, turns: [4], tilt: 5 },
      { ...jersey, surface: 'one-way' },
      '2±3',
    ],
    ['exactly enough', { needs: { across: 60, along: 20 } }, jersey, '0 180'],
    ['cloth never measured', { needs: { across: 1, along: 0 } }, woven, 'stretch'],
    ['cloth never measured, nothing needed', {}, woven, '0 180'],
    [
      'stretch up and down on pile',
      { needs: upAndDown, grain: 'any' },
      { ...jersey, surface: 'one-way' },
      'stretch',
    ],
    // Cloth roles.
    ['lining on main cloth', { cloth: 'lining' }, { ...woven, cloth: 'main' }, 'cloth'],
    ['lining on lining', { cloth: 'lining' }, { ...woven, cloth: 'lining' }, '0 180'],
    ['lining on cloth of no role', { cloth: 'lining' }, woven, '0 180'],
    ['piece of no role on lining', {}, { ...woven, cloth: 'lining' }, '0 180'],
  ])('%s', (_, rule, panel, expected) => {
    expect(read(rule, panel)).toBe(expected)
  })
})

describe('sides', () => {
  const twoFaced: PanelCloth = { ...woven, faces: 2 }
  const sides = (panel: PanelCloth, side: CopySide) =>
    waysOn({ ...piece, turns: [0] }, panel, side).map((way) => way.mirrored)

  it('one right side: each copy lies on its own side, a free one on either', () => {
    expect(sides(woven, 'as-drawn')).toEqual([false])
    expect(sides(woven, 'turned-over')).toEqual([true])
    expect(sides(woven, 'free')).toEqual([false, true])
  })

  it('both faces usable: any copy may be turned over', () => {
    for (const side of ['as-drawn', 'turned-over', 'free'] as const)
      expect(sides(twoFaced, side)).toEqual([false, true])
  })

  it('no turn, no way', () => {
    expect(waysOn({ ...piece, grain: 'bias' }, velvet, 'free')).toEqual([])
  })
})
