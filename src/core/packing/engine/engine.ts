import type { Mm } from '../../base/units.ts'
import { CLEARANCE_EXCESS, INSET } from '../config.ts'
import type { PackingProblem } from '../problem.ts'
import { NoFitTable } from './no-fit-table.ts'
import { AskedShapes, ShapeTable } from './shapes.ts'

/** Tables kept, one a clearance, and what one may hold when another problem joins: some ten megabytes, and short rows. */
const MOST_TABLES = 3
const MOST_SHARED = { shapes: 1000, noFits: 3000 }

/** Shapes and no-fit polygons. They do not depend on the regions. */
export interface Engine {
  readonly table: AskedShapes
  readonly noFits: NoFitTable
}

/** What the engines of several problems may share: nothing that is computed of an outline depends on what else is here. */
class SharedTables {
  private readonly shapes = new ShapeTable(INSET)
  private readonly noFits: NoFitTable

  constructor(clearance: Mm) {
    this.noFits = new NoFitTable(this.shapes, clearance, CLEARANCE_EXCESS)
  }

  engine(): Engine {
    return { table: new AskedShapes(this.shapes), noFits: this.noFits }
  }

  /** True once there is so much that it costs more than it saves. */
  get isFull(): boolean {
    return this.shapes.shapes.length > MOST_SHARED.shapes || this.noFits.size > MOST_SHARED.noFits
  }
}

/** An engine that shares nothing. */
export function createEngine(clearance: Mm): Engine {
  return new SharedTables(clearance).engine()
}

const engines = new WeakMap<PackingProblem, Engine>()
const shared = new Map<Mm, SharedTables>()

/**
 * The engine of a problem, kept for as long as the problem is: its spare is asked for right after its lay. Problems with
 * the same clearance share what has been computed of their items, as those of one pattern on many garments do. Only
 * time is saved: the answer is that of an engine of its own.
 */
export function engineOf(problem: PackingProblem): Engine {
  let engine = engines.get(problem)
  if (!engine) {
    engine = sharedTables(problem.clearance).engine()
    engines.set(problem, engine)
  }
  return engine
}

/** The tables for a clearance, begun anew when they are full; those that were not asked for the longest are let go. */
function sharedTables(clearance: Mm): SharedTables {
  const known = shared.get(clearance)
  const tables = known && !known.isFull ? known : new SharedTables(clearance)
  shared.delete(clearance)
  shared.set(clearance, tables)
  const [oldest] = shared.keys()
  if (shared.size > MOST_TABLES && oldest !== undefined) shared.delete(oldest)
  return tables
}
