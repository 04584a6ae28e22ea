type Node = { [key: string]: unknown }

/** Paths of all numbers of an input. */
export function numbersOf(value: unknown, path: string[] = []): string[][] {
  if (typeof value === 'number') return [path]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, each]) => numbersOf(each, [...path, key]))
}

/** A copy with some of its numbers so many times as large; whole numbers that grow stay whole. */
export function stretched(input: object, changes: readonly (readonly [string[], number])[]): object {
  const copy = structuredClone(input)
  for (const [path, factor] of changes) {
    const parent = path.slice(0, -1).reduce<Node>((node, key) => node[key] as Node, copy as Node)
    const key = path.at(-1)!
    parent[key] =
      Number.isInteger(parent[key]) && factor > 1
        ? Math.round((parent[key] as number) * factor)
        : (parent[key] as number) * factor
  }
  return copy
}
