import type { AgreedPlan } from '../../model/briefing/agreed.ts'

/** A plan on its way in: its time and id are the store's. */
export type NewPlan = Omit<AgreedPlan, 'id' | 'agreedAt'>

/** Agreed plans of a workspace's events. They are added, never changed and never deleted. */
export interface PlanStore {
  /** Null, and nothing is kept, where the match is not in the schedule. */
  agree(event: string, plan: NewPlan): Promise<AgreedPlan | null>
  /** How many there are: another after every change. */
  count(event: string): Promise<number>
  /** Oldest first. */
  of(event: string): Promise<AgreedPlan[]>
}
