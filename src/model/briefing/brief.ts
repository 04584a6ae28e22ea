import type { Option, Point, Role } from '../documents/types.ts'
import { groundOf } from '../match/ground.ts'
import { matchReport } from '../match/report.ts'
import { Collected } from '../match/run.ts'
import type { MatchReport } from '../match/types.ts'
import { callsOf } from './calls.ts'
import { differenceOf, winOf } from './differences.ts'
import { factsOf } from './facts.ts'
import { planned } from './given.ts'
import type { LaneRequest } from './lanes.ts'
import { bestLineUps, type Standing } from './lineUps.ts'
import { type ByHand, versionsOf } from './ownLineUp.ts'
import { markingOf, slowingsOf, threatOf } from './threat.ts'
import type { Briefing, BriefingRequest, Contention, Job, PlayVersions, RobotCall, Version } from './types.ts'
import { candidatesOf, goalsOf, waysOf } from './ways.ts'

/** Who plays versions and finds lanes: threads of a server, or a browser's worker. */
export interface Hands {
  play: PlayVersions
  lanes(request: LaneRequest): Promise<Point[][]>
  /** What is being worked on: of so many steps. */
  progress?(done: number, all: number): void
}

/** Steps of the work, for its progress. */
export const steps = 5

/**
 * Everything that is said before a match: who does what, when to go, whom to watch, and what would change that. All versions of
 * the match meet the same luck, so that what is told of differences is theirs. Readings of section 8 of the model:
 * the calls are found one robot at a time, the others leaving as they were seen to; slowing is told as every trip of an opponent
 * taking longer by one share all match; a robot that stands in its way scores nothing in teleop.
 *
 * @param byHand a line-up of one's own, of which all is said instead; the computed one stands beside it
 */
export async function brief(
  request: BriefingRequest,
  { play, lanes, progress }: Hands,
  byHand?: ByHand,
): Promise<Briefing> {
  const { all, chosen } = candidatesOf(request)
  progress?.(0, steps)
  const standings = byHand ? await bothOf(request, byHand, play) : await bestLineUps(chosen, play)
  const best = standings[0]!
  progress?.(1, steps)
  const calls = await callsOf(request, best.version, play)
  progress?.(2, steps)
  const { marks, slowed, ...unmarked } = best.version
  const told = marks === undefined || slowed === undefined ? null : { marks, slowed }
  const atJobs: Version = { ...unmarked, calls: calls.map(callIn) as unknown as Version['calls'] }
  const jobbing = await reported(request, atJobs, play)
  progress?.(3, steps)
  // What standing in an opponent's way is worth is told beside the same line-up with everybody at their jobs.
  const slowings = await slowingsOf(request, { version: atJobs, ...jobbing }, play)
  const threat = await threatOf(request, { version: atJobs, ...jobbing, slowings, told }, play)
  const marking = told ?? markingOf(request, threat)
  const version = { ...atJobs, ...marking }
  const { report } = marking ? await reported(request, version, play) : jobbing
  progress?.(4, steps)
  const facts = await factsOf(request, standings, play)
  const jobs = jobsOf(request, { version, calls, report })
  const ways = await lanes({
    game: request.game,
    robots: jobs.map(({ sources, goals }, i) => ({
      option: request.ours[i]!,
      source: sources[0] ?? null,
      goal: goals[0] ?? null,
    })),
  })
  progress?.(5, steps)
  return {
    replicates: planned,
    seed: request.seed,
    slowing: request.slowing,
    jobs: jobs.map((job, i) => ({ ...job, lane: ways[i]! })),
    opponents: request.theirs.map((option, j) => ({
      team: option.id,
      goals: broughtTo(report, 3 + j),
      finish: Object.keys(option.robot.finish)[0] ?? null,
    })),
    report,
    lineUps: standings.map((standing) => lineUpOf(request, standing, best)),
    considered: { candidates: all, played: chosen.length },
    slowings,
    threat,
    contention: contentionOf(request, report),
    facts,
  }
}

async function reported(request: BriefingRequest, version: Version, play: PlayVersions) {
  const [plan] = await play([version], { from: 0, to: planned, sums: true })
  const collected = new Collected(groundOf(request.game), { replicates: planned })
  for (const [block, sums] of plan!.sums.entries()) collected.add(block, sums)
  return { plan: plan!, report: matchReport(groundOf(request.game), collected.sums, request.seed) }
}

/** The line-up that somebody set by hand, and the computed one in the same matches. */
async function bothOf(request: BriefingRequest, byHand: ByHand, play: PlayVersions): Promise<Standing[]> {
  const { own, computed } = versionsOf(request, byHand)
  const played = await play([own, computed], { from: 0, to: planned })
  return [own, computed].map((version, k) => ({ version, played: played[k]! }))
}

/** A robot for which nothing is to be gained goes as it was seen to. */
const callIn = (call: RobotCall | null) => (call === null ? null : (call.at ?? 'never'))

/** Goals that a robot brings something to, most pieces first. */
const broughtTo = (report: MatchReport, robot: number): string[] =>
  Object.entries(report.robots[robot]!.pieces)
    .filter(([, { mean }]) => mean >= 0.25)
    .sort((a, b) => b[1].mean - a[1].mean)
    .map(([goal]) => goal)

function jobsOf(
  request: BriefingRequest,
  { version, calls, report }: { version: Version; calls: (RobotCall | null)[]; report: MatchReport },
): Omit<Job, 'lane'>[] {
  const starts = startsOf(request)
  return request.ours.map((option, i) => {
    const role = roleIn(option, version, i)
    const sent = goalsOf(option, role)
    // As it was seen: what it hardly brings anything to is no job.
    const brought = broughtTo(report, i).filter((goal) => sent.includes(goal))
    return {
      team: option.id,
      start: starts[i]!,
      sources: role.sources,
      goals: brought.length > 0 ? brought : sent,
      finish: Object.keys(option.robot.finish)[0] ?? null,
      call: calls[i]!,
    }
  })
}

/** What one of ours does; whoever stands in an opponent's way collects nothing and brings nothing. */
function roleIn(option: Option, { ways, marks }: Version, i: number): Role {
  const role = waysOf(option)[ways[i] as number]!
  return marks === i ? { ...role, sources: [], goals: [] } : role
}

/** Each where it was seen to start; who finds that taken gets the next one. */
function startsOf({ game, ours }: BriefingRequest): string[] {
  const taken = new Set<string>()
  return ours.map(({ start }) => {
    const own = !taken.has(start) ? start : (game.starts.find(({ id }) => !taken.has(id))?.id ?? start)
    taken.add(own)
    return own
  })
}

const lineUpOf = (request: BriefingRequest, standing: Standing, best: Standing) => ({
  goals: request.ours.map((option, i) => goalsOf(option, roleIn(option, standing.version, i))),
  win: winOf(standing.played.margins),
  loses: standing === best ? null : differenceOf(best.played, standing.played),
})

/** Where ours wait, longest first; less than a second is none. */
function contentionOf({ ours }: BriefingRequest, { robots }: MatchReport): Contention[] {
  return ours
    .flatMap(({ id }, i) =>
      Object.entries(robots[i]!.waiting).map(([place, { mean, standardError }]) => ({
        place,
        team: id,
        seconds: { mean, standardError },
      })),
    )
    .filter(({ seconds }) => seconds.mean >= 1)
    .sort((a, b) => b.seconds.mean - a.seconds.mean)
}
