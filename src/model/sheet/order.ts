/** A way with its points in one case: a strength of play, or a reading of the rules. */
export interface Ranked {
  id: string
  points: number
}

/** Best first; ties to 0.05 points, which no screen shows, keep the sheet's order. */
export function order(ways: readonly Ranked[]): string[] {
  const position = new Map(ways.map(({ id }, index) => [id, index]))
  const shown = (points: number) => Math.round(points * 10)
  return [...ways]
    .sort((a, b) => shown(b.points) - shown(a.points) || position.get(a.id)! - position.get(b.id)!)
    .map(({ id }) => id)
}

/** Pairs whose order differs between two cases: the first leads in one and trails in the other, by what a screen shows. */
export function changes(one: readonly Ranked[], other: readonly Ranked[]): [string, string][] {
  const shown = (ways: readonly Ranked[], id: string) =>
    Math.round((ways.find((way) => way.id === id)?.points ?? Number.NaN) * 10)
  return order(one).flatMap((ahead, index, ids) =>
    ids
      .slice(index + 1)
      .filter((behind) => shown(one, ahead) > shown(one, behind) && shown(other, ahead) < shown(other, behind))
      .map((behind): [string, string] => [ahead, behind]),
  )
}
