import { failed, type Result } from '../../core/base/result.ts'
import type { LayPanel, LayPiece, LayProblem, Motif } from '../../core/planning/lay-problem.ts'
import { readBySchema } from '../faults.ts'
import { type ProblemFile, problemSchema } from './problem-schema.ts'

/**
 * A problem file, as its text or as what JSON.parse made of it, as a lay problem with every default filled in.
 * Faults: one for each wrong field, with its path.
 */
export function readProblem(source: unknown): Result<LayProblem> {
  const json = typeof source === 'string' ? parseJson(source) : { ok: true as const, value: source }
  if (!json.ok) return json
  const file = readBySchema(problemSchema, json.value)
  return file.ok ? { ok: true, value: problemOf(file.value) } : file
}

/** The value that JSON text stands for; one fault of the whole document if it is no JSON. */
export function parseJson(text: string): Result<unknown> {
  try {
    return { ok: true, value: JSON.parse(text) }
  } catch (error) {
    const why = error instanceof Error ? error.message.replace(/\s+/g, ' ') : String(error)
    return failed([{ field: 'document', message: `is not JSON: ${why}` }])
  }
}

function problemOf({ name, clearance, seconds, panels, pieces }: ProblemFile): LayProblem {
  return { name, clearance, seconds, panels: panels.map(panelOf), pieces: pieces.map(pieceOf) }
}

type MotifFile = NonNullable<ProblemFile['panels'][number]['motifs']>[number]

function panelOf({ finished, finishedDepth, motifs, ...panel }: ProblemFile['panels'][number]): LayPanel {
  return {
    ...panel,
    stretch: panel.stretch ?? null,
    cloth: panel.cloth ?? null,
    ...(finished ? { finished } : {}),
    ...(finishedDepth === undefined ? {} : { finishedDepth }),
    ...(motifs ? { motifs: motifs.map(motifOf) } : {}),
  }
}

function motifOf({ id, outline, up }: MotifFile): Motif {
  return { id, outline, ...(up === undefined ? {} : { up }) }
}

function pieceOf({ sit, shows, turnAlike, ...piece }: ProblemFile['pieces'][number]): LayPiece {
  return {
    ...piece,
    turns: piece.turns ?? null,
    surface: piece.surface ?? 'as-panel',
    cloth: piece.cloth ?? null,
    ...(sit ? { sit } : {}),
    ...(shows ? { shows } : {}),
    ...(turnAlike === undefined ? {} : { turnAlike }),
  }
}
