import type { PrismaClient } from '../generated/client.ts'
import { markOf } from './rows.ts'
import type { Scope } from './schedule.ts'
import type { EventMarks } from './types.ts'

interface Found {
  revision: number | bigint
  removed: boolean | number | bigint
  body: string
  matches: number | bigint
  changes: number | bigint | null
  results: number | bigint
  choices: number | bigint
  seats: string | null
  newest: number | bigint | null
  since: number | bigint
}

type Raw = Pick<PrismaClient, '$queryRaw'>

/**
 * By one statement, because it is asked for by every screen all the time. Matches are never deleted and each change of one raises its
 * revision, so that their number and the sum of their revisions are others after every change; results and choices are only added.
 */
export async function readMarks(
  client: Raw,
  { workspaceId, event }: Scope,
  newest: number,
): Promise<EventMarks | null> {
  const [found] = await client.$queryRaw<Found[]>`
  SELECT "Document"."revision", "Document"."removed", "Revision"."body",
    (SELECT COUNT(*) FROM "ScheduledMatch" WHERE "workspaceId" = ${workspaceId} AND "event" = ${event}) AS "matches",
    (SELECT SUM("revision") FROM "ScheduledMatch" WHERE "workspaceId" = ${workspaceId} AND "event" = ${event}) AS "changes",
    (SELECT COUNT(*) FROM "OfficialResult" WHERE "workspaceId" = ${workspaceId} AND "event" = ${event}) AS "results",
    (SELECT COUNT(*) FROM "RecordChoice" WHERE "workspaceId" = ${workspaceId} AND "event" = ${event}) AS "choices",
    (SELECT string_agg("match" || ' ' || "alliance" || ' ' || "position" || ' ' || COALESCE("person", ''), ',' ORDER BY "match", "alliance", "position")
      FROM "SeatAssignment" WHERE "workspaceId" = ${workspaceId} AND "event" = ${event}) AS "seats",
    (SELECT MAX("arrival") FROM "FieldRecord" WHERE "workspaceId" = ${workspaceId} AND "event" = ${event}) AS "newest",
    (SELECT COUNT(*) FROM "FieldRecord" WHERE "workspaceId" = ${workspaceId} AND "event" = ${event} AND "arrival" > ${newest}) AS "since"
  FROM "Document" JOIN "Revision" ON "Revision"."workspaceId" = "Document"."workspaceId" AND "Revision"."kind" = "Document"."kind"
    AND "Revision"."id" = "Document"."id" AND "Revision"."revision" = "Document"."revision"
  WHERE "Document"."workspaceId" = ${workspaceId} AND "Document"."kind" = 'event' AND "Document"."id" = ${event}`
  if (!found) return null
  const revision = Number(found.revision)
  return {
    revision,
    body: JSON.parse(found.body) as unknown,
    frame: markOf([
      [revision, Boolean(Number(found.removed))],
      [Number(found.matches), Number(found.changes)],
    ]),
    rest: markOf([[Number(found.results), Number(found.choices)], [found.seats]]),
    newest: Number(found.newest),
    since: Number(found.since),
  }
}
