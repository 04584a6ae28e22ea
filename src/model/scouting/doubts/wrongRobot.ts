import { groupsOf } from './groups.ts'
import type { Checked, OneRecord } from './sides.ts'
import { logDensity, type Off } from './spread.ts'
import type { Usual } from './usual.ts'

export interface Mistaken {
  record: OneRecord
  /** The robot that it fits. */
  fits: string
  gain: number
}

/**
 * Which records of a side tell of another robot of the match. Had the scout watched that one, the record says what the others
 * who watched it say, and the robot that it should be about did what is missing in the result, which then has to be usual for it.
 * As it stands, the record is usual for its robot and the result is off by chance.
 *
 * @param inMatch all records of the match
 * @param off official less scouted: goals, autonomous, finishes
 */
export function mistakenOf(
  { records }: Checked,
  {
    inMatch,
    off,
    sds,
    usual,
    goals,
  }: { inMatch: readonly OneRecord[]; off: Off; sds: readonly number[]; usual: Usual; goals: number },
): Mistaken[] {
  const missing = off.slice(0, goals)
  if (missing.some((value) => value === null)) return []
  // Three records make a side's difference, two the difference between two records.
  const twoRecords = sds.slice(0, goals).map((sd) => sd * Math.sqrt(2 / 3))
  const asItIs = logDensity(missing, sds)
  return records.flatMap((record): Mistaken[] => {
    const { pieces, team, match } = record
    // Where others watched the robot too, they disagree with it, and that is told.
    if (!pieces || record.share < 1) return []
    const usually = usual.logChance(team, match, pieces)
    const really = pieces.map((n, k) => n + (missing[k] as number))
    const impossible = really.reduce((sum, n, k) => sum + (n < 0 ? (n / (sds[k] as number)) ** 2 / 2 : 0), 0)
    const then = usual.logChance(team, match, really) - impossible
    const spread = twoRecords.reduce((sum, sd, k) => sum + Math.log(sd / (sds[k] as number)), 0)
    const candidates = groupsOf(
      inMatch.filter((other) => other.team !== team && other.pieces),
      (other) => other.team,
    )
    return [...candidates].map(([fits, theirs]): Mistaken => {
      const apart = pieces.map(
        (n, k) => n - theirs.reduce((sum, each) => sum + (each.pieces as number[])[k]! / theirs.length, 0),
      )
      const same = logDensity(apart, twoRecords) - spread
      const finish = finishGain(record, theirs) + finishesGain(off[goals + 1])
      return { record, fits, gain: same + then - usually - asItIs + finish }
    })
  })
}

/** A robot's finish is seldom seen wrongly, so a record with another finish than the robot's is hardly about it. */
function finishGain({ finish }: OneRecord, theirs: readonly OneRecord[]): number {
  const said = theirs.flatMap((each) => (each.finish === undefined ? [] : [each.finish]))
  if (finish === undefined || said.length === 0) return 0
  return said.includes(finish) ? 0.5 : -3
}

/**
 * Points from finishes are off for half of the robots that were taken for others, and hardly ever else (both stated, not
 * estimated).
 */
function finishesGain(off: number | null | undefined): number {
  if (off == null) return 0
  return off === 0 ? -0.7 : 3
}
