import { forecasts as shown } from '../seed/event/forecasts.ts'
import { seedDocuments, seededEvent } from '../seed/index.ts'
import { hashed } from './api/records/rows.ts'
import { demoNote } from './model/documents/demo.ts'
import { cellsOf, type Row } from './model/scouting/index.ts'
import type { Store, WorkspaceStore } from './store/types.ts'

/** Nobody: the demo is put in before the server belongs to anybody. */
const by = { person: null, device: null }

/** Puts the demo season into a store that holds nothing yet. Says whether it did. */
export async function seedIfEmpty(store: Store, workspace: string): Promise<boolean> {
  if (!(await store.isEmpty())) return false
  const team = store.workspace(await store.ensureWorkspace(workspace))
  // First: a start that ends here finds no documents the next time, and goes through it again.
  await seedEvent(team)
  const requests = seedDocuments().map((document) => ({ ...document, base: null, note: demoNote }))
  const outcome = await team.saveAll(requests)
  if (!('saved' in outcome)) return false
  await seedRecords(team)
  return true
}

async function seedEvent({ events, forecasts }: WorkspaceStore): Promise<void> {
  const { event, matches, results } = seededEvent()
  const { mark } = await events.matches(event.id)
  await events.edit(event.id, { put: matches, remove: [], mark, by })
  const revisions = new Map((await events.matches(event.id)).matches.map((each) => [each.match.id, each.revision]))
  // Before the results, since none is kept of a match that has one.
  await forecasts.keep(event.id, shown)
  const entries = results.map((result) => {
    const { match } = result
    return { match, base: 0, matchRevision: revisions.get(match)!, result }
  })
  await events.enter(event.id, entries, by)
}

/** Last, because records are taken of events that are there. */
async function seedRecords({ records }: WorkspaceStore): Promise<void> {
  const rows = seededEvent().records
  const byDevice = new Map<string, Row[]>()
  for (const row of rows) byDevice.set(row.device, [...(byDevice.get(row.device) ?? []), row])
  await Promise.all(
    [...byDevice].map(([device, own]) =>
      records.accept({ device, person: null, session: null, unsent: 0, rows: own.map((row) => cellsOf(hashed(row))) }),
    ),
  )
}
