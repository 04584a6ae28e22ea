import type { DocumentKind } from '../src/model/documents/records.ts'
import { comparisonWith } from './comparison.ts'
import { comparisonResult } from './comparisonResult.ts'
import { decisionWith } from './decision.ts'
import { designs } from './designs.ts'
import { event } from './event/index.ts'
import { game } from './game.ts'
import { options } from './options.ts'
import { parts } from './parts.ts'
import { quickSheet } from './quickSheet.ts'
import { standings } from './standings.ts'

export { type Performance, type PlayedMatch, type SeededEvent, seededEvent } from './event/index.ts'
export { optionOf, withRobot } from './resolve.ts'

/** The season as it is stored. Everything in it is invented. */
export const breakwater = {
  game,
  designs,
  options,
  comparison: comparisonWith(comparisonResult),
  decision: decisionWith(comparisonResult),
  standings,
  quickSheet,
}

export interface SeedDocument {
  kind: DocumentKind
  id: string
  name: string
  body: unknown
}

/** The season's documents in the order of saving: what others refer to comes first, each as revision 1. */
export function seedDocuments(): SeedDocument[] {
  const { game, designs, options, comparison, decision, standings, quickSheet } = breakwater
  return [
    { kind: 'game', id: game.id, name: game.name, body: game },
    ...designs.map((body): SeedDocument => ({ kind: 'design', id: body.robot.id, name: body.robot.name, body })),
    ...options.map((body): SeedDocument => ({ kind: 'option', id: body.option.id, name: body.option.name, body })),
    { kind: 'comparison', id: standings.id, name: standings.name, body: standings },
    { kind: 'comparison', id: comparison.id, name: comparison.name, body: comparison },
    { kind: 'decision', id: decision.id, name: decision.name, body: decision },
    { kind: 'quickSheet', id: quickSheet.id, name: quickSheet.name, body: quickSheet },
    { kind: 'event', id: event.id, name: event.name, body: event },
    ...parts.map((part): SeedDocument => ({ kind: 'part', id: part.id, name: part.name, body: { format: 1, part } })),
  ]
}
