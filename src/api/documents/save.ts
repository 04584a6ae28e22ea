import { type DocumentKind, within } from '../../model/documents/index.ts'
import type { SaveRequest, WorkspaceStore } from '../../store/types.ts'
import { problemsOf } from '../contracts/index.ts'
import { type Failure, refuse } from '../errors.ts'
import { found } from '../sentences.ts'
import { checks } from './checks.ts'
import { type Bodies, contracts, headIn, headOf } from './kinds.ts'
import type { Outcome } from './read.ts'

/** The request's body, if it is what its kind must be; refused with the paths of what is wrong otherwise. */
export function parsed<Kind extends DocumentKind>(kind: Kind, body: unknown): Bodies[Kind] {
  const result = contracts[kind].safeParse(body, { reportInput: true })
  if (!result.success) refuse(problemsOf(result.error, ['body']))
  return result.data as Bodies[Kind]
}

/** A request may repeat id and name of its document, but not say others. */
function checkHead(request: Head, head: { id: string; name: string }): void {
  for (const field of ['id', 'name'] as const) {
    const said = request[field]
    if (said === undefined || said === head[field]) continue
    const parts = { field, inside: head[field], asked: said }
    refuse([found(['body', ...headIn[request.kind], field], { code: 'otherHead', parts })])
  }
}

type Head = Omit<SaveRequest, 'name'> & { name?: string }

/** Checks a document as a whole, and only then saves it as a new revision. */
export async function save(workspace: WorkspaceStore, request: Head): Promise<Outcome> {
  const { kind, base, note } = request
  const body = parsed(kind, request.body)
  const head = headOf(kind, body)
  checkHead(request, head)
  refuse(within(['body'], await checks[kind](body as never, workspace)))
  return (await workspace.save({ kind, ...head, body, base, ...(note === undefined ? {} : { note }) })) as Outcome
}

/** What is wrong with a document that nobody has saved yet; `shape`: whether it has the form of its kind at all. */
export async function check<Kind extends DocumentKind>(workspace: WorkspaceStore, kind: Kind, body: unknown) {
  const result = contracts[kind].safeParse(body, { reportInput: true })
  if (!result.success) return { shape: false, problems: problemsOf(result.error) }
  return { shape: true, problems: await checks[kind](result.data as never, workspace) }
}

/** How plain HTTP says that somebody saved in between: with both sides, so that nothing is lost. */
export function conflictOf(outcome: Outcome): Failure | null {
  if ('saved' in outcome) return null
  const { current, base } = outcome.conflict
  const message =
    base === null
      ? `There is already “${current.name}” with the id “${current.id}”, in revision ${current.revision}`
      : `“${current.name}” was saved as revision ${current.revision} while you edited revision ${base.revision}: merge both, or save a copy`
  return { code: 'conflict', message, path: ['base'], details: { current, base } }
}
