let strict = false

/** From now on a broken invariant throws. Tests and benchmarks call this; a person's session carries on without the bad result. */
export function throwOnBrokenInvariants(): void {
  strict = true
}

/** Something that cannot happen has happened: throws where mistakes are hunted, else leaves the caller to do without. */
export function brokenInvariant(message: string): void {
  if (strict) throw new Error(`Broken invariant: ${message}`)
}
