import type { Job, JobEvent as Row } from '../generated/client.ts'
import type { JobEvent, JobState, JobSummary, StoredJob } from './types.ts'

/** All columns but the two long ones. */
export type SummaryRow = Omit<Job, 'request' | 'result'>

const time = (date: Date | null): string | null => date?.toISOString() ?? null

export function summaryOf(row: SummaryRow): JobSummary {
  const { id, kind, name, done, total, replaced } = row
  return {
    id,
    kind,
    name,
    state: row.state as JobState,
    askedAt: row.askedAt.toISOString(),
    startedAt: time(row.startedAt),
    endedAt: time(row.endedAt),
    done,
    total,
    replaced,
    failure: row.failure === null ? null : JSON.parse(row.failure),
  }
}

export const storedOf = (row: Job): StoredJob => ({
  ...summaryOf(row),
  request: JSON.parse(row.request),
  result: row.result === null ? null : JSON.parse(row.result),
})

export const eventOf = ({ sequence, kind, at }: Row): JobEvent => ({
  sequence,
  kind: kind as JobEvent['kind'],
  at: at.toISOString(),
})
