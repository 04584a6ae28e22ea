import type { Sibling, Traits } from '../scores/index.ts'

/** Alliances by what is expected of them; worked out once each. */
export class Strengths {
  readonly sibling: Sibling
  private readonly known = new Map<string, { teams: string[]; traits: Traits }>()

  private readonly lineups = new Map<string, string[]>()

  constructor(sibling: Sibling) {
    this.sibling = sibling
  }

  /** An alliance as it plays: of more than three robots the three that are expected to score most together. */
  of(members: readonly string[]): { teams: string[]; traits: Traits } {
    const key = members.join('\n')
    const known = this.known.get(key)
    if (known) return known
    const made = members.length <= 3 ? this.made([...members]) : this.best(members)
    this.known.set(key, made)
    return made
  }

  /**
   * Chance to win against others, all of them as likely to be met, by common draw. A tie counts half; an alliance without
   * robots can not win.
   */
  against(ours: readonly string[], others: readonly (readonly string[])[], sampled = {}): Float64Array {
    const own = this.of(ours).traits
    const rows = others.map((each) => this.sibling.chances(own, this.of(each).traits, sampled))
    const sum = new Float64Array(rows[0]?.length ?? 0)
    for (const row of rows) for (let d = 0; d < sum.length; d++) sum[d] = (sum[d] as number) + (row[d] as number)
    return sum.map((total) => total / rows.length)
  }

  private made(teams: string[]) {
    return { teams, traits: this.sibling.alliance(teams) }
  }

  private best(members: readonly string[]) {
    return this.of(this.playing(members))
  }

  /** Who of an alliance plays, without working out more than that. */
  playing(members: readonly string[]): string[] {
    if (members.length <= 3) return [...members]
    const key = members.join('\n')
    const known = this.lineups.get(key)
    if (known) return known
    const trios = triosOf(members).map((teams) => ({ teams, expected: this.sibling.typical(teams) }))
    const { teams } = trios.reduce((best, each) => (each.expected > best.expected ? each : best))
    this.lineups.set(key, teams)
    return teams
  }
}

/** All threes of an alliance, in its order. */
export function triosOf(members: readonly string[]): string[][] {
  return members.flatMap((a, i) =>
    members.slice(i + 1).flatMap((b, j) => members.slice(i + j + 2).map((c) => [a, b, c])),
  )
}
