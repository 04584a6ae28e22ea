import type { Briefing } from './types.ts'

/** What another briefing of the same match says otherwise. */
export type Change =
  | { kind: 'robots'; team: string }
  | { kind: 'goals'; team: string; goals: string[] }
  | { kind: 'finish'; team: string; finish: string | null }
  | { kind: 'call'; team: string; from: number | null; to: number | null }
  | { kind: 'threat'; team: string }
  | { kind: 'marker'; team: string | null }
  | { kind: 'win'; from: number; to: number }

/** A chance that moves by less is told as the same. */
const leastMove = 0.02

const winOf = ({ report: { win, tie } }: Briefing) => win.probability + tie.probability / 2

/** What changed for whoever reads, weightiest first; none where the plan stands as it was. */
export function changesBetween(before: Briefing, after: Briefing): Change[] {
  const teams = (of: Briefing) => [...of.jobs, ...of.opponents].map(({ team }) => team)
  const fresh = teams(after).filter((team) => !teams(before).includes(team))
  const changes: Change[] = fresh.map((team) => ({ kind: 'robots', team }))
  for (const job of after.jobs) {
    const { team } = job
    const own = before.jobs.find((each) => each.team === team)
    if (!own) continue
    if (own.goals.join() !== job.goals.join()) changes.push({ kind: 'goals', team, goals: job.goals })
    if (own.finish !== job.finish) changes.push({ kind: 'finish', team, finish: job.finish })
    const [from, to] = [own.call?.at ?? null, job.call?.at ?? null]
    if (from !== to) changes.push({ kind: 'call', team, from, to })
  }
  if (before.threat.team !== after.threat.team) changes.push({ kind: 'threat', team: after.threat.team })
  if (before.threat.marker !== after.threat.marker) changes.push({ kind: 'marker', team: after.threat.marker })
  const [from, to] = [winOf(before), winOf(after)]
  if (Math.abs(to - from) >= leastMove) changes.push({ kind: 'win', from, to })
  return changes
}
