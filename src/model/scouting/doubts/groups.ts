/** Items under what a key says of them, in the order of their first. */
export function groupsOf<Of>(all: readonly Of[], keyOf: (each: Of) => string): Map<string, Of[]> {
  const groups = new Map<string, Of[]>()
  for (const each of all) {
    const group = groups.get(keyOf(each))
    if (group) group.push(each)
    else groups.set(keyOf(each), [each])
  }
  return groups
}
