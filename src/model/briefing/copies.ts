import type { Point } from '../documents/types.ts'
import type { Briefing, Job } from './types.ts'

/** What one of ours was told to do at the end of our last match, and what it did. Times are time left (s). */
export interface LastCall {
  match: string
  /** Null while there is no result. */
  score: { ours: number; theirs: number } | null
  robots: {
    team: string
    /** Null: to play on to the end. */
    called: number | null
    /** Null: nobody saw it leave. */
    left: number | null
    /** What it achieved; null: nothing, missing: nobody said. */
    finish?: string | null
  }[]
}

/** What a drive coach reads at arm's length: no probabilities. */
export interface CoachCopy {
  jobs: (Pick<Job, 'team' | 'start' | 'sources' | 'goals' | 'finish' | 'lane'> & {
    /** Time left (s); null: plays on to the end. Points are what going three seconds early or late costs. */
    call: { at: number | null; early3: number; late3: number } | null
  })[]
  threat: { team: string; goal: string | null; marker: string | null }
  last: LastCall | null
}

/** The same plan without anything that says how good a partner is. */
export interface PartnerCopy {
  jobs: (Pick<Job, 'team' | 'start' | 'sources' | 'goals' | 'finish'> & {
    call: { at: number | null } | null
    lane: Point[]
  })[]
  threat: { team: string; goal: string | null; marker: string | null }
}

export function coachCopy({ jobs, threat }: Briefing, last: LastCall | null): CoachCopy {
  return {
    jobs: jobs.map(({ team, start, sources, goals, finish, lane, call }) => ({
      ...{ team, start, sources, goals, finish, lane },
      // What luck makes of nothing is nothing.
      call: call && { at: call.at, early3: Math.max(0, call.early3.mean), late3: Math.max(0, call.late3.mean) },
    })),
    threat: { team: threat.team, goal: threat.goal, marker: threat.marker },
    last,
  }
}

/** Everything that a partner's copy may hold, by name: a field that is not here is left out. */
export const partnerFields = [
  'team',
  'start',
  'sources',
  'goals',
  'finish',
  'call',
  'at',
  'lane',
  'goal',
  'marker',
  'jobs',
  'threat',
] as const

export function partnerCopy({ jobs, threat }: Briefing): PartnerCopy {
  return {
    jobs: jobs.map(({ team, start, sources, goals, finish, lane, call }) => ({
      ...{ team, start, sources, goals, finish, lane },
      call: call && { at: call.at },
    })),
    threat: { team: threat.team, goal: threat.goal, marker: threat.marker },
  }
}
