import { Selection, type SelectionStep } from '../selection/index.ts'
import type { KeptLine, LineRefusal, PickLine, Topic } from './types.ts'

export type Written = Pick<KeptLine, 'id' | 'line'>

export const topicOf = ({ kind }: PickLine): Topic => (kind === 'aside' || kind === 'order' ? kind : 'selection')

/** What the lines of an event come to. */
export interface Protocol {
  /** As it runs; null: none was begun. */
  selection: Selection | null
  /** Lines of the selection that are in force, its beginning first. */
  inForce: Written[]
  /** Whom we do not invite, with the reason. */
  aside: ReadonlyMap<string, string>
  /** Our own order by hand; none: the computed one. */
  order: readonly string[]
  /** Id of the newest line of each topic. */
  newest: { readonly [topic in Topic]: string | null }
}

/**
 * Follows an event's lines in their order. What can not be is passed over: a file of another server may hold it, and what was
 * called out after it still counts.
 */
export function protocolOf(lines: readonly Written[]): Protocol {
  const stack: { written: Written; selection: Selection }[] = []
  const aside = new Map<string, string>()
  const newest: { [topic in Topic]: string | null } = { selection: null, aside: null, order: null }
  let order: readonly string[] = []
  for (const written of lines) {
    const { id, line } = written
    newest[topicOf(line)] = id
    if (line.kind === 'order') order = line.teams
    else if (line.kind === 'aside') {
      if (line.reason === null) aside.delete(line.team)
      else aside.set(line.team, line.reason)
    } else if (line.kind === 'undoes') {
      if (stack.at(-1)?.written.id === line.line) stack.pop()
    } else {
      const selection = after(line, stack.at(-1)?.selection ?? null)
      if (selection instanceof Selection) stack.push({ written, selection })
    }
  }
  const from = stack.findLastIndex(({ written }) => written.line.kind === 'begins')
  return {
    selection: stack.at(-1)?.selection ?? null,
    inForce: stack.slice(Math.max(0, from)).map(({ written }) => written),
    aside,
    order,
    newest,
  }
}

/** The first of further lines that can not follow those before, and why; null where all can. */
export function refusedLine(
  before: readonly Written[],
  further: readonly Written[],
): { index: number; refusal: LineRefusal } | null {
  const lines = [...before]
  for (const [index, written] of further.entries()) {
    const refusal = refusalOf(protocolOf(lines), written.line)
    if (refusal) return { index, refusal }
    lines.push(written)
  }
  return null
}

function refusalOf({ selection, inForce }: Protocol, line: PickLine): LineRefusal | null {
  if (line.kind === 'undoes') return inForce.at(-1)?.id === line.line ? null : { why: 'notLast' }
  if (line.kind === 'order') return twice(line.teams)
  if (line.kind === 'aside') return null
  const made = after(line, selection)
  return made instanceof Selection ? null : made
}

function after(
  line: { kind: 'called'; step: SelectionStep } | Extract<PickLine, { kind: 'begins' }>,
  selection: Selection | null,
): Selection | LineRefusal {
  if (line.kind === 'begins') return twice(line.seeds) ?? Selection.begin(line.rules, line.seeds)
  if (!selection) return { why: 'notBegun' }
  const { step } = line
  const reason = selection.refusal(step)
  return reason === null ? selection.take(step) : { why: 'refused', team: step.team, reason }
}

function twice(teams: readonly string[]): LineRefusal | null {
  const team = teams.find((each, index) => teams.indexOf(each) < index)
  return team === undefined ? null : { why: 'seedTwice', team }
}
