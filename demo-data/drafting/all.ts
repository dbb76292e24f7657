import type { Pattern } from '../../src/core/patterns/pattern.ts'
import { babyBib } from './bib.ts'
import { boxerShorts } from './boxer-shorts.ts'
import { bucketHat } from './bucket-hat.ts'
import { halfCircleSkirt } from './half-circle-skirt.ts'
import { headband } from './headband.ts'
import { leggings } from './leggings.ts'
import { pouch } from './pouch.ts'
import { raglanTop } from './raglan-top.ts'
import { sportsTop } from './sports-top.ts'

/** Every pattern that comes with the app; each is shipped as demo-data/patterns/<id>.json. */
export function allDrafts(): readonly Pattern[] {
  return [
    babyBib(),
    boxerShorts(),
    bucketHat(),
    halfCircleSkirt(),
    headband(),
    leggings(),
    pouch(),
    raglanTop(),
    sportsTop(),
  ]
}

/** The text of a pattern's file: a point a line, so that a change of one corner is one changed line. */
export function patternFile(pattern: Pattern): string {
  const text = JSON.stringify(pattern, null, 1)
  const flat = text.replace(/\[\s+(-?[\d.]+),\s+(-?[\d.]+)\s+\]/g, '[$1, $2]')
  return `${flat}\n`
}
