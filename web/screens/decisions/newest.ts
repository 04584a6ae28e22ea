import { TRPCClientError } from '@trpc/client'
import type {
  ComparisonRecord,
  DecisionRecord,
  DesignRecord,
  DocumentKind,
  OptionRecord,
} from '../../../src/model/documents/records.ts'
import type { Game } from '../../../src/model/documents/types.ts'
import { getDocument } from '../../data/api.ts'
import type { Newest } from './changes.ts'

/** A document at its newest revision; null where there is none with that id. */
async function newest<Body>(kind: DocumentKind, id: string): Promise<{ body: Body; revision: number } | null> {
  try {
    const { body, revision } = await getDocument(kind, id)
    return { body: body as Body, revision }
  } catch (error) {
    const data = error instanceof TRPCClientError ? (error.data as { failure?: { code: string } } | null) : null
    if (data?.failure?.code === 'notFound') return null
    throw error
  }
}

/** The newest revisions of everything that a record was computed from. */
export async function newestOf(decision: DecisionRecord): Promise<Newest> {
  const { game, options } = decision.snapshot
  const [rules, comparison, ...ways] = await Promise.all([
    newest<Game>('game', game.id),
    newest<ComparisonRecord>('comparison', decision.comparison.id),
    ...options.map(({ id }) => newest<OptionRecord>('option', id)),
  ])
  const designs = await Promise.all(
    options.map(async ({ robot }) => {
      const design = await newest<DesignRecord>('design', robot.id)
      return [robot.id, design && { body: design.body.robot, revision: design.revision }] as const
    }),
  )
  return {
    game: rules,
    ways: Object.fromEntries(options.map(({ id }, index) => [id, ways[index]!])),
    robots: Object.fromEntries(designs),
    inputs: comparison?.body.inputs ?? null,
  }
}

/** The same with a copy that was written back from the field in place of its design. */
export function withStandIn(newest: Newest, copy: { body: DesignRecord; revision: number } | undefined): Newest {
  const of = copy?.body.fromField?.design.id
  if (!copy || of === undefined) return newest
  return { ...newest, robots: { ...newest.robots, [of]: { body: copy.body.robot, revision: copy.revision } } }
}
