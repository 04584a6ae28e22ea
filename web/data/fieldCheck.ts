import { useQuery } from '@tanstack/react-query'
import type { FieldReport } from '../../src/model/scouting/field/types.ts'
import { client, said } from './api.ts'

export type RunKind = 'match' | 'practice'

export interface TimedTeam {
  team: string
  matches: number
  practice: number
}

/** Robots with timelines. What the records say is asked for anew with the estimates. */
export const useTimedTeams = (event: string) =>
  useQuery({
    queryKey: ['event', event, 'estimates', 'timed'],
    queryFn: () => said(client.estimates.timed.query({ event })) as unknown as Promise<TimedTeam[]>,
  })

export interface FieldQuestion {
  team: string
  design: string
  only: RunKind | null
  /** Id of the decision record in which the design is frozen; null: as it is now. */
  decision: string | null
}

export interface FieldCheck {
  team: string
  /** The revision is null where nobody knows which one a record has frozen. */
  design: { id: string; name: string; revision: number | null }
  decision: { id: string; name: string; revision: number } | null
  /** How often the robot was changed during the event. */
  changes: number
  report: FieldReport
}

/** A robot's timelines against a design. `of` null: not yet known. `revision` is part of the question, so that a saved design is asked about anew. */
export const useFieldCheck = (event: string, of: (FieldQuestion & { revision: number }) | null) =>
  useQuery({
    queryKey: ['event', event, 'estimates', 'field', of],
    queryFn: () => {
      const { only, decision, revision, ...asked } = of!
      const frozen = decision === null ? { revision } : { decision }
      return said(
        client.estimates.field.query({ event, ...asked, ...frozen, ...(only && { only }) }),
      ) as unknown as Promise<FieldCheck>
    },
    enabled: of !== null,
    placeholderData: (before) =>
      before?.team === of?.team && before?.design.id === of?.design && (before?.decision?.id ?? null) === of?.decision
        ? before
        : undefined,
  })
