import type { Alliance } from '../scouting/types.ts'
import type { Briefing } from './types.ts'

/** What was agreed for a match, as it was said then. */
export interface PlanBody {
  alliance: Alliance
  jobs: {
    team: string
    start: string
    sources: string[]
    goals: string[]
    finish: string | null
    /** Time left (s); null: nothing was called. */
    call: number | null
  }[]
  threat: { team: string; marker: string | null }
  /** Chance to win, a tie as half, and expected scores. */
  win: number
  scores: { ours: number; theirs: number }
  /** The line-up is one of our own: the computed one that it stands instead of, and its chance in the same matches. */
  instead?: { goals: string[][]; own: number; win: number } | undefined
  note: string
}

/** An agreed plan as it is kept. Nothing of it is ever changed; the newest of a match is the one in force. */
export interface AgreedPlan {
  /** SHA-256 of the canonical JSON of all else, in hexadecimal. */
  id: string
  match: string
  /** By the server's clock (ISO 8601). */
  agreedAt: string
  /** Id of the person; null while the server belongs to nobody. */
  person: string | null
  /** SHA-256 of what the briefing was made from. */
  from: string
  body: PlanBody
}

/** A briefing as a plan to be agreed on. */
export function planBodyOf(
  briefing: Briefing,
  { alliance, note, byHand }: { alliance: Alliance; note: string; byHand: boolean },
): PlanBody {
  const { jobs, threat, report } = briefing
  const [own, computed] = briefing.lineUps
  return {
    alliance,
    jobs: jobs.map(({ team, start, sources, goals, finish, call }) => ({
      ...{ team, start, sources, goals, finish },
      call: call?.at ?? null,
    })),
    threat: { team: threat.team, marker: threat.marker },
    win: report.win.probability + report.tie.probability / 2,
    scores: { ours: report.score.ours.mean, theirs: report.score.theirs.mean },
    ...(byHand && own && computed && { instead: { goals: computed.goals, own: own.win.mean, win: computed.win.mean } }),
    note,
  }
}

/** The plan in force of each match. */
export const plansInForce = (plans: readonly AgreedPlan[]): Map<string, AgreedPlan> =>
  new Map(plans.map((plan) => [plan.match, plan]))
