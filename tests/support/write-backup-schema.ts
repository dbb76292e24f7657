import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import * as z from 'zod/mini'
import { backupSchema } from '../../src/readers/backup/backup-schema.ts'

/** Writes the JSON Schema that is published beside the reader of backups, from the reader's own schema. */
const published = fileURLToPath(new URL('../../src/readers/backup/backup.schema.json', import.meta.url))
writeFileSync(published, `${JSON.stringify(z.toJSONSchema(backupSchema, { io: 'input' }), null, 2)}\n`)
