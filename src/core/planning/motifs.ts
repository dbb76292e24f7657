import type { LayPanel, Motif } from './lay-problem.ts'

export function hasMotif({ motifs = [] }: LayPanel, id: string): boolean {
  return motifs.some((motif) => motif.id === id)
}

/** The motif of that id, on whichever panel it is. */
export function motifOf(id: string, panels: readonly LayPanel[]): Motif | undefined {
  return panels.flatMap(({ motifs = [] }) => motifs).find((motif) => motif.id === id)
}
