import type { MatchReport } from '../match/types.ts'
import { differenceOf } from './differences.ts'
import type { BriefingRequest, PlayedVersion, PlayVersions, Slowing, Threat, Version } from './types.ts'

/** Matches with a slowed opponent, and with one of ours in its way. */
const [slowing, marking] = [2000, 2500]

/** Who of ours stands in which opponent's way, by their places. */
interface Marking {
  marks: number
  slowed: number
}

/** As a threat has it: null where nobody leaves their job. */
export function markingOf({ ours, theirs }: BriefingRequest, { team, marker }: Threat): Marking | null {
  if (marker === null) return null
  return { marks: ours.findIndex(({ id }) => id === marker), slowed: theirs.findIndex(({ id }) => id === team) }
}

/** What slowing each opponent is worth, in their order. */
export async function slowingsOf(
  request: BriefingRequest,
  of: { version: Version; plan: PlayedVersion },
  play: PlayVersions,
): Promise<Slowing[]> {
  const versions = request.theirs.map((_, slowed): Version => ({ ...of.version, slowed }))
  const played = await play(versions, { from: 0, to: slowing })
  return request.theirs.map(({ id }, j) => ({ team: id, gains: differenceOf(played[j]!, of.plan) }))
}

/**
 * The opponent whose slowing is worth most, and whether one of ours should see to it all match.
 *
 * @param of `told`: somebody set by hand who stands in whose way; then that is the one
 */
export async function threatOf(
  request: BriefingRequest,
  of: {
    version: Version
    plan: PlayedVersion
    slowings: readonly Slowing[]
    report: MatchReport
    told: Marking | null
  },
  play: PlayVersions,
): Promise<Threat> {
  const { slowings, report, told } = of
  const order = slowings.map((_, j) => j)
  const worth = (j: number) => slowings[j]!.gains
  const weightiest = order.sort(
    (a, b) => worth(b).win.mean - worth(a).win.mean || worth(b).points.mean - worth(a).points.mean,
  )[0]!
  const slowed = told?.slowed ?? weightiest
  const versions = request.ours.map((_, marks): Version => ({ ...of.version, slowed, marks }))
  const played = await play(versions, { from: 0, to: marking })
  const markers = request.ours
    .map(({ id }, i) => ({ team: id, gains: differenceOf(played[i]!, of.plan) }))
    .sort((a, b) => b.gains.win.mean - a.gains.win.mean || b.gains.points.mean - a.gains.points.mean)
  const { win } = markers[0]!.gains
  const pieces = Object.entries(report.robots[3 + slowed]!.pieces).sort((a, b) => b[1].mean - a[1].mean)[0]
  return {
    team: request.theirs[slowed]!.id,
    goal: pieces && pieces[1].mean > 0 ? pieces[0] : null,
    pieces: pieces?.[1].mean ?? 0,
    gains: worth(slowed),
    markers,
    marker: told ? request.ours[told.marks]!.id : win.mean > 2 * win.standardError ? markers[0]!.team : null,
  }
}
