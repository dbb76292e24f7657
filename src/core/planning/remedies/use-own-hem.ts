import type { Mm } from '../../base/units.ts'
import { panelsKeepingHems } from '../../garments/panels-of.ts'
import { hemSaved } from '../../patterns/own-hem.ts'
import type { CheckQuestion } from '../check.ts'
import { askedPieces } from './change.ts'
import type { Remedy, RemedyMaker } from './remedy.ts'

/** More pieces by themselves, those with the deepest hems, would take too long to solve. */
const MOST_PIECES = 3

/**
 * Lays pieces with a straight hem onto a hem of the garment: all that are drawn with one, then all that may have one, then
 * each alone. Of a plain shape only its maker knows whether the lower edge is a hem, so those come after the others.
 */
export const useOwnHem: RemedyMaker = {
  kinds: ['own-hem'],
  propose(question) {
    const before = question.ownHem ?? []
    if (!panelsKeepingHems(question.garment).some(({ hems }) => hems.length > 0)) return []
    const able = askedPieces(question)
      .map(({ piece: { id }, shape }) => ({ id, saved: hemSaved(shape), plain: shape.form !== 'outline' }))
      .filter(({ id, saved }) => saved > 0 && !before.includes(id))
      .sort((a, b) => Number(a.plain) - Number(b.plain) || b.saved - a.saved)
    const drawn = able.filter(({ plain }) => !plain)
    const all = drawn.length < able.length ? [drawn, able] : [drawn]
    const single = able.length === 1 ? [] : able.slice(0, MOST_PIECES).map((one) => [one])
    const choices = [...all, ...single].filter(
      (hemmed, k, list) => hemmed.length > 0 && isNew(hemmed, list.slice(0, k)),
    )
    return choices.map((hemmed) => onOwnHem(question, before, hemmed))
  },
}

interface Able {
  readonly id: string
  readonly saved: Mm
  readonly plain: boolean
}

function isNew(hemmed: readonly Able[], earlier: readonly (readonly Able[])[]): boolean {
  return !earlier.some(
    (other) => other.length === hemmed.length && other.every((one) => hemmed.includes(one)),
  )
}

function onOwnHem(question: CheckQuestion, before: readonly string[], hemmed: readonly Able[]): Remedy {
  const pieces = hemmed.map(({ id }) => id)
  const lowerEdge = hemmed.filter(({ plain }) => plain).map(({ id }) => id)
  const saved = Math.max(...hemmed.map((one) => one.saved))
  return {
    steps: [{ kind: 'own-hem', pieces, saved, ...(lowerEdge.length > 0 ? { lowerEdge } : {}) }],
    question: { ...question, ownHem: [...before, ...pieces] },
  }
}
