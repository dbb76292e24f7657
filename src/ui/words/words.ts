import { check } from './en/check.ts'
import { cutSheet } from './en/cut-sheet.ts'
import { flaws } from './en/flaws.ts'
import { garments } from './en/garments.ts'
import { lookFor } from './en/look-for.ts'
import { measureAgain } from './en/measure-again.ts'
import { notions } from './en/notions.ts'
import { parts } from './en/parts.ts'
import { patterns } from './en/patterns.ts'
import { projects } from './en/projects.ts'
import { remedies } from './en/remedies.ts'
import { settings } from './en/settings.ts'
import { sharing } from './en/sharing.ts'
import { cautions, shell } from './en/shell.ts'
import { stash } from './en/stash.ts'
import { verdict } from './en/verdict.ts'

/** Every sentence and label of the app, by area. Another language is another folder with the same keys. */
export const words = {
  parts,
  shell,
  cautions,
  check,
  flaws,
  garments,
  verdict,
  remedies,
  measureAgain,
  lookFor,
  patterns,
  stash,
  projects,
  cutSheet,
  notions,
  settings,
  sharing,
}
