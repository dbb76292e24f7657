import { describe, expect, it } from 'vitest'
import { type ClassUse, readStyles } from '../support/class-names.ts'

const { sheets, byThemselves, uses, roots, reached } = readStyles()

/** Names that end in a dash are put together with others: one with that start will do. */
const has = (names: ReadonlySet<string>, name: string) =>
  name.endsWith('-') ? [...names].some((each) => each.startsWith(name)) : names.has(name)

const isStyled = ({ name }: ClassUse) => [...sheets.values()].some((names) => has(names, name))

/** Those of the uses that none of the files has a rule for. */
function withoutRule(some: readonly ClassUse[], files: ReadonlySet<string>): readonly string[] {
  const there = [...files].flatMap((file) => sheets.get(file) ?? [])
  const without = some.filter((use) => isStyled(use) && !there.some((names) => has(names, use.name)))
  return without.map(({ file, name }) => `${file}: ${name}`)
}

const always = reached('app/main.tsx')

describe('every class name', () => {
  it('is looked for where there are some', () => {
    expect(sheets.size).toBeGreaterThan(30)
    expect(uses.length).toBeGreaterThan(300)
    expect(roots.length).toBeGreaterThan(20)
  })

  it.each(roots)('of %s has its rule in what comes with it, whatever was opened before', (root) => {
    const files = reached(root)
    const shown = uses.filter(({ file }) => files.has(file))
    expect(shown.length).toBeGreaterThan(0)
    expect(withoutRule(shown, new Set([...files, ...always]))).toEqual([])
  })

  it('of a part or a drawing has its rule in what the part itself brings along, if it has one of its own', () => {
    const shared = uses.filter(({ file, name }) => /^(parts|drawing)\//.test(file) && has(byThemselves, name))
    expect(shared.length).toBeGreaterThan(50)
    const without = shared.flatMap((use) =>
      withoutRule([use], new Set([...reached(use.file), 'app/base.css'])),
    )
    expect(without).toEqual([])
  })
})
