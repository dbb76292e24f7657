import { writeFileSync } from 'node:fs'
import { allDrafts, patternFile } from './all.ts'

/** Writes every drafted pattern to demo-data/patterns. Run with `npx tsx demo-data/drafting/write.ts`. */
for (const pattern of allDrafts()) {
  const file = new URL(`../patterns/${pattern.id}.json`, import.meta.url)
  writeFileSync(file, patternFile(pattern))
  console.log(`${pattern.id}: ${pattern.pieces.length} pieces, ${pattern.sizes.length} sizes`)
}
