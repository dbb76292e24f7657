import type { Deadline } from '../../src/core/base/deadline.ts'

/**
 * Polygon operations, and numbers drawn by chance, that may come between two looks at the deadline and after the last: some
 * ten milliseconds' work.
 */
const MOST_OPERATIONS = 150
const MOST_DRAWS = 1500

/**
 * Work counted by what is done, never by the clock: polygon operations and numbers drawn. `deadline` passes after so many
 * looks at it; work that goes on longer without a look throws, so that what would never end fails instead of hanging.
 */
class Work {
  operations = 0
  draws = 0
  /** The most that came without a look so far. */
  most = { operations: 0, draws: 0 }
  private looksLeft = Number.POSITIVE_INFINITY

  begin(looks: number): void {
    this.looksLeft = looks
    this.operations = 0
    this.draws = 0
  }

  readonly clock = (): number => 0

  readonly deadline: Deadline = {
    passed: () => {
      if (this.looksLeft > 0) {
        this.looksLeft--
        this.operations = 0
        this.draws = 0
        return false
      }
      return true
    },
    left: () => (this.looksLeft > 0 ? Number.POSITIVE_INFINITY : 0),
  }

  operate(): void {
    if (++this.operations > MOST_OPERATIONS) throw new Error('polygon operations go on and on')
    this.most.operations = Math.max(this.most.operations, this.operations)
  }

  draw(): void {
    if (++this.draws > MOST_DRAWS) throw new Error('drawing by chance goes on and on')
    this.most.draws = Math.max(this.most.draws, this.draws)
  }
}

export const work = new Work()

interface RandomModule {
  readonly seededRandom: (seed: number) => () => number
}

export function countedRandom<M extends RandomModule>(module: M): M {
  const seededRandom: RandomModule['seededRandom'] = (seed) => {
    const random = module.seededRandom(seed)
    return () => {
      work.draw()
      return random()
    }
  }
  return { ...module, seededRandom }
}

type Call = (...args: never[]) => unknown

/** The module with every function counted but those that only add up. */
export function countedCalls<M extends object>(module: M): M {
  const counted = Object.entries(module).map(([name, value]) => {
    if (typeof value !== 'function' || name === 'ringsArea') return [name, value]
    const call = value as Call
    const counting: Call = (...args) => {
      work.operate()
      return call(...args)
    }
    return [name, counting]
  })
  return Object.fromEntries(counted) as M
}
