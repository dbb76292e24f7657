import { writeFileSync } from 'node:fs'
import { projectStage } from '../../src/core/stash/progress.ts'
import { makeProjects } from './make.ts'

/** Writes the demo projects to stash.json beside this file. Run with `npx tsx demo-data/projects/write.ts`. */
const made = makeProjects()
// A point a line, as in the patterns' files.
const text = JSON.stringify(made, null, 1).replace(/\[\s+(-?[\d.e-]+),\s+(-?[\d.e-]+)\s+\]/g, '[$1, $2]')
writeFileSync(new URL('stash.json', import.meta.url), `${text}\n`)
for (const project of made.projects) console.log(`${project.name}: ${projectStage(project, made)}`)
