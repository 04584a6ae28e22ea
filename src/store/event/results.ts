import type { StandingResult } from '../../model/scouting/record/index.ts'
import { alliances, type Match, type Side } from '../../model/scouting/types.ts'
import type { TransactionClient } from '../generated/internal/prismaNamespace.ts'
import { audit } from './audit.ts'
import { matchOf, resultOf } from './rows.ts'
import { type Scope, write } from './schedule.ts'
import type { By, ResultEntry, ResultOutcome, States, StoredResult } from './types.ts'

type Reader = Pick<TransactionClient, 'officialResult'>

/** The newest state of each match's result. */
export async function readResults(client: Reader, scope: Scope): Promise<StoredResult[]> {
  const rows = await client.officialResult.findMany({ where: scope, orderBy: [{ match: 'asc' }, { revision: 'asc' }] })
  return [...new Map(rows.map((row) => [row.match, resultOf(row)])).values()]
}

/** The results that stand. One that was taken back and entered again stands since it was entered again. */
export async function readStanding(client: Reader, scope: Scope): Promise<StandingResult[]> {
  const rows = await client.officialResult.findMany({ where: scope, orderBy: [{ match: 'asc' }, { revision: 'asc' }] })
  const standing = new Map<string, StandingResult>()
  for (const { match, enteredAt, result } of rows.map(resultOf)) {
    if (result === null) standing.delete(match)
    else standing.set(match, { match, since: standing.get(match)?.since ?? enteredAt, result })
  }
  return [...standing.values()]
}

export async function readHistory(client: Reader, scope: Scope, match: string): Promise<StoredResult[]> {
  const rows = await client.officialResult.findMany({ where: { ...scope, match }, orderBy: { revision: 'desc' } })
  return rows.map(resultOf)
}

/** Thrown to undo what was entered before the entry that is refused. */
export class StaleResults extends Error {
  readonly matches: string[]
  constructor(matches: string[]) {
    super('a result was changed in between')
    this.matches = matches
  }
}

/** Enters results, each as a further row. */
export async function enterResults(
  transaction: TransactionClient,
  scope: Scope,
  { entries, by, now }: { entries: readonly ResultEntry[]; by: By; now: Date },
): Promise<ResultOutcome> {
  const newest = new Map((await readResults(transaction, scope)).map((stored) => [stored.match, stored]))
  const stale: string[] = []
  const applied: StoredResult[] = []
  for (const entry of entries) {
    const entered = await enter(transaction, scope, { entry, before: newest.get(entry.match), by, now })
    if (entered) applied.push(entered)
    else stale.push(entry.match)
  }
  if (stale.length > 0) throw new StaleResults(stale)
  return { applied }
}

async function enter(
  transaction: TransactionClient,
  scope: Scope,
  of: { entry: ResultEntry; before: StoredResult | undefined; by: By; now: Date },
): Promise<StoredResult | null> {
  const { entry, before, by, now } = of
  const row = await transaction.scheduledMatch.findUnique({
    where: { workspaceId_event_id: { ...scope, id: entry.match } },
  })
  if (!row || row.removed) return null
  const { match, revision } = matchOf(row)
  const marked = entry.states ? withStates(match, entry.states) : match
  const body = entry.result === null ? null : JSON.stringify(entry.result)
  // The same entry again, as it is sent whose first answer got lost on the way.
  if (before?.revision === entry.base + 1 && same(before, body) && JSON.stringify(marked) === row.body) return before
  if ((before?.revision ?? 0) !== entry.base || revision !== entry.matchRevision) return null
  if (JSON.stringify(marked) !== row.body)
    await write(transaction, scope, { match: marked, revision: revision + 1, now })
  // Only a robot's state was corrected: the result itself has no new revision.
  if (before && same(before, body)) {
    await note(transaction, scope, { entry, by, now, before: before.result })
    return before
  }
  const next = { match: entry.match, revision: entry.base + 1, body, enteredAt: now, person: by.person }
  await transaction.officialResult.create({ data: { ...scope, ...next } })
  await note(transaction, scope, { entry, by, now, before: before?.result ?? null })
  return resultOf(next)
}

const same = ({ result }: StoredResult, body: string | null): boolean =>
  (result === null ? null : JSON.stringify(result)) === body

async function note(
  transaction: TransactionClient,
  { workspaceId, event }: Scope,
  { entry, by, now, before }: { entry: ResultEntry; by: By; now: Date; before: StoredResult['result'] },
): Promise<void> {
  const { match, result, states } = entry
  await audit(transaction, {
    workspaceId,
    at: now,
    by,
    action: 'event.results.enter',
    subject: event,
    detail: { match, before, result, ...(states ? { states } : {}) },
  })
}

function withStates(match: Match, states: States): Match {
  const sides = alliances.map((alliance): [string, Side] => [
    alliance,
    match[alliance].map((slot, index) => ({ ...slot, state: states[alliance][index] ?? slot.state })) as Side,
  ])
  return { ...match, ...Object.fromEntries(sides) }
}
