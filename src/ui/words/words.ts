import { check } from './en/check.ts'
import { flaws } from './en/flaws.ts'
import { garments } from './en/garments.ts'
import { parts } from './en/parts.ts'
import { patterns } from './en/patterns.ts'
import { sharing } from './en/sharing.ts'
import { cautions, shell } from './en/shell.ts'
import { verdict } from './en/verdict.ts'

/**
 * The sentences and labels that the first screens need, by area. A screen that comes later imports its own area
 * from `en/`. Another language is another folder with the same keys.
 */
export const words = {
  parts,
  shell,
  cautions,
  check,
  flaws,
  garments,
  verdict,
  patterns,
  sharing,
}
