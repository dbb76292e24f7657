/**
 * The one of these names that a part of an address stands for, which `encodeURIComponent` put there: the router has undone
 * some of that, but not all. undefined: none of them.
 */
export function namedIn(address: string | undefined, names: readonly string[]): string | undefined {
  return names.find((name) => decodeURI(encodeURIComponent(name)) === address)
}
