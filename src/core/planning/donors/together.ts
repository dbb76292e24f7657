import type { ClothRole } from '../../base/terms.ts'
import { compareKeys, ranked, rankKeys } from './rank.ts'
import type { DonorRow } from './row.ts'

/** The rows of one role of a project. */
export interface RoleRows {
  readonly role: ClothRole
  /** Of the role's pieces, mm². */
  readonly area: number
  readonly rows: readonly DonorRow[]
}

/** A donor for each role, no donor twice. */
export interface Together {
  readonly parts: readonly { readonly role: ClothRole; readonly row: DonorRow }[]
  /** Roles that no donor left yields. */
  readonly open: readonly ClothRole[]
}

/**
 * Ways to make a project from several donors, one a role, best first: the fewest roles open, then the keys that donors are
 * ranked by, added up over the roles. Only donors with a whole lay are used.
 *
 * Lemma: sums of keys compare as numbers do, so in a best choice every role has one of its own best R donors, R the number
 * of roles: else one of those is free, and taking it is no worse. The first proposal is therefore the best of all.
 */
export function donorsTogether(roles: readonly RoleRows[], most = 5): readonly Together[] {
  const choices = roles.map(({ role, area, rows }) =>
    ranked(
      rows.filter(({ verdict }) => verdict === 'fits'),
      area,
    )
      .slice(0, roles.length)
      .map((row) => ({ role, row, keys: rankKeys(row, area) })),
  )
  const found: { readonly together: Together; readonly keys: readonly number[] }[] = []
  const choose = (k: number, parts: (typeof choices)[number], open: readonly ClothRole[]): void => {
    if (k === roles.length) {
      found.push({
        together: { parts: parts.map(({ role, row }) => ({ role, row })), open },
        keys: sumOf(parts, open),
      })
      return
    }
    const free = (choices[k] ?? []).filter(({ row }) => !parts.some((part) => part.row.donor === row.donor))
    for (const part of free) choose(k + 1, [...parts, part], open)
    choose(k + 1, parts, [...open, (roles[k] as RoleRows).role])
  }
  choose(0, [], [])
  const fewest = Math.min(...found.map(({ together }) => together.open.length))
  return found
    .filter(({ together }) => together.open.length === fewest && together.parts.length > 0)
    .sort((a, b) => compareKeys(a.keys, b.keys))
    .slice(0, most)
    .map(({ together }) => together)
}

function sumOf(
  parts: readonly { readonly keys: readonly number[] }[],
  open: readonly ClothRole[],
): readonly number[] {
  const length = parts[0]?.keys.length ?? 0
  const sums = Array.from({ length }, (_, i) => parts.reduce((sum, { keys }) => sum + (keys[i] as number), 0))
  return [open.length, ...sums]
}
