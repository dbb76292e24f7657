import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseSync } from 'vite'

const UI = fileURLToPath(new URL('../../src/ui', import.meta.url))

/** A class name that a file gives to what it draws. One that ends in a dash is the start of several. */
export interface ClassUse {
  /** Path within src/ui. */
  readonly file: string
  readonly name: string
}

export interface Styled {
  /** The class names with a rule, by style sheet. */
  readonly sheets: ReadonlyMap<string, ReadonlySet<string>>
  /** Names that have a rule wherever they stand; the others look as whatever they stand in says. */
  readonly byThemselves: ReadonlySet<string>
  readonly uses: readonly ClassUse[]
  /** The files whose code is fetched by itself: the app's first, then a screen each. */
  readonly roots: readonly string[]
  /** The file and all that it imports, style sheets too. What is fetched later is not among them. */
  readonly reached: (file: string) => ReadonlySet<string>
}

/** Reads which class names the interface uses, where they have rules, and which style sheets each file brings along. */
export function readStyles(): Styled {
  const all = readdirSync(UI, { recursive: true, encoding: 'utf8' }).map((file) => join(UI, file))
  const sheets = new Map(
    all.filter((file) => file.endsWith('.css')).map((file) => [short(file), namesIn(file)]),
  )
  const known = new Set([...sheets.values()].flatMap((names) => [...names]))
  const sources = new Map(all.filter((file) => file.endsWith('.tsx')).map((file) => [file, parsed(file)]))
  const uses = [...sources].flatMap(([file, source]) =>
    [...namesUsed(source, known)].map((name) => ({ file: short(file), name })),
  )
  return {
    sheets,
    byThemselves: new Set(all.filter((file) => file.endsWith('.css')).flatMap((file) => [...aloneIn(file)])),
    uses,
    roots: ['app/main.tsx', ...fetchedBy('app/routes.tsx')],
    reached: (file) => new Set([...reached(join(UI, file))].map(short)),
  }
}

const short = (file: string) => relative(UI, file)

/** A node of the syntax tree, as ESTree has it. */
interface Node {
  readonly type: string
  readonly [field: string]: unknown
}

function parsed(file: string): Node {
  return parseSync(file, readFileSync(file, 'utf8')).program as unknown as Node
}

function childrenOf(node: Node): readonly Node[] {
  return Object.values(node)
    .flat()
    .filter((part): part is Node => typeof (part as Node | null)?.type === 'string')
}

/** The files that a file fetches by `import()`. */
function fetchedBy(file: string): readonly string[] {
  const found: string[] = []
  const visit = (node: Node): void => {
    const path = node.type === 'ImportExpression' ? (node.source as Node).value : null
    if (typeof path === 'string') found.push(short(resolve(UI, dirname(file), path)))
    for (const child of childrenOf(node)) visit(child)
  }
  visit(parsed(join(UI, file)))
  return found
}

function namesIn(file: string): ReadonlySet<string> {
  return new Set(selectorsIn(file).flatMap(classesOf))
}

/** Those that a selector without any other element has. */
function aloneIn(file: string): ReadonlySet<string> {
  return new Set(
    selectorsIn(file)
      .filter((selector) => !/[\s>+~]/.test(selector))
      .flatMap(classesOf),
  )
}

/** What stands in braces or comments has no class names. */
function selectorsIn(file: string): readonly string[] {
  const css = readFileSync(file, 'utf8').replace(/\/\*[\s\S]*?\*\//g, '')
  const lists = [...css.matchAll(/([^{};]+)\{/g)].map(([, list]) => list ?? '')
  return lists.flatMap((list) => list.split(',').map((selector) => selector.trim()))
}

function classesOf(selector: string): readonly string[] {
  return [...selector.matchAll(/\.(-?[A-Za-z_][\w-]*)/g)].map(([, name]) => name ?? '')
}

/**
 * Every word of a `class` attribute; elsewhere in the file, where class names are put together, the words of texts that
 * are class names beyond doubt, by their dash.
 */
function namesUsed(program: Node, known: ReadonlySet<string>): ReadonlySet<string> {
  const names = new Set<string>()
  const visit = (node: Node, inClass: boolean): void => {
    if (node.type === 'ImportDeclaration') return
    const here = inClass || isClass(node)
    for (const word of wordsOf(node))
      if (here ? word !== '-' : word.includes('-') && known.has(word)) names.add(word)
    // What a value is compared with is no class name.
    if (inClass && node.type === 'BinaryExpression') return
    for (const child of childrenOf(node)) visit(child, here)
  }
  visit(program, false)
  return names
}

function isClass({ type, name }: Node): boolean {
  return type === 'JSXAttribute' && (name as Node).name === 'class'
}

function wordsOf({ type, value }: Node): readonly string[] {
  if (type === 'Literal' && typeof value === 'string') return words(value)
  return type === 'TemplateElement' ? words((value as { readonly cooked: string }).cooked) : []
}

function words(text: string): readonly string[] {
  return text.split(/\s+/).filter((word) => word !== '')
}

/** The file and all that it imports as it is loaded; types and what is fetched later are not. */
function reached(from: string): ReadonlySet<string> {
  const seen = new Set<string>()
  const go = (file: string): void => {
    if (seen.has(file)) return
    seen.add(file)
    if (!file.endsWith('.css')) for (const next of importsOf(file)) go(next)
  }
  go(from)
  return seen
}

const imports = new Map<string, readonly string[]>()

function importsOf(file: string): readonly string[] {
  const known = imports.get(file)
  if (known) return known
  const found = (parsed(file).body as readonly Node[]).flatMap(({ source, importKind }): string[] => {
    const path = (source as Node | undefined)?.value
    if (typeof path !== 'string' || importKind === 'type') return []
    const target = resolve(dirname(file), path)
    return path.startsWith('.') && target.startsWith(UI) ? [target] : []
  })
  imports.set(file, found)
  return found
}
