import { checkGame, within } from '../../model/documents/index.ts'
import type { Path, Problem } from '../../model/errors.ts'
import {
  apartKey,
  type EventContents,
  type ExchangeSaid,
  type KeptRecord,
  tellExchange,
} from '../../model/event/archive/index.ts'
import { seatKey } from '../../model/event/seats.ts'
import { forecastId } from '../../store/index.ts'
import type { HashedRow } from '../../store/types.ts'
import { disagreement, hashed } from '../records/rows.ts'
import { unhurried } from './pieces.ts'

export const problem = (path: Path, said: ExchangeSaid): Problem => ({ path, ...tellExchange(said) })

/** What stands there a second time. */
function twice<Item>(part: string, items: readonly Item[], keyOf: (item: Item) => string): Problem[] {
  const seen = new Set<string>()
  return items.flatMap((item, index) => {
    const id = keyOf(item)
    if (seen.has(id)) return [problem([part, index], { code: 'twiceInFile', parts: { id } })]
    seen.add(id)
    return []
  })
}

/** The last of a thing's revisions is taken for the newest. */
function unordered<Item extends { revision: number }>(
  part: string,
  items: readonly Item[],
  keyOf: (item: Item) => string = () => '',
): Problem[] {
  const newest = new Map<string, number>()
  return items.flatMap((item, index) => {
    const { revision } = item
    const before = newest.get(keyOf(item)) ?? 0
    newest.set(keyOf(item), Math.max(before, revision))
    return revision < before ? [problem([part, index, 'revision'], { code: 'revisionOrder', parts: { revision } })] : []
  })
}

/** What a contract does not see: ids that must be there once, and what must belong together. */
export function checkContents(contents: EventContents): Problem[] {
  const { event, rules, matches, results, assignments, records, apart, forecasts } = contents
  const { id, game } = event.at(-1)!.body
  const known = new Set(matches.map(({ match }) => match.id))
  const other = (path: Path, inside: string, what = inside) =>
    problem(path, { code: 'otherEventInFile', parts: { id: what, event: id, inside } })
  const homeless = (part: string, of: readonly { match: string }[]) =>
    of.flatMap(({ match }, index) =>
      known.has(match) ? [] : [problem([part, index, 'match'], { code: 'noMatchInFile', parts: { id: match } })],
    )
  return [
    ...event.flatMap(({ body }, index) => (body.id === id ? [] : [other(['event', index, 'body', 'id'], body.id)])),
    ...rules.flatMap(({ body }, index) =>
      body.id === rules[0]!.body.id && body.id === game ? [] : [other(['rules', index, 'body', 'id'], body.id)],
    ),
    ...rules.flatMap(({ body }, index) => within(['rules', index, 'body'], checkGame(body))),
    ...unordered('event', event),
    ...unordered('rules', rules),
    ...unordered('results', results, ({ match }) => match),
    ...twice('event', event, ({ revision }) => String(revision)),
    ...twice('rules', rules, ({ revision }) => String(revision)),
    ...twice('matches', matches, ({ match }) => match.id),
    ...twice('results', results, ({ match, revision }) => `${match} ${revision}`),
    ...twice('assignments', assignments, ({ match, seat }) => `${match} ${seatKey(seat)}`),
    ...twice('records', records, ({ row }) => row.id),
    ...twice('apart', apart, apartKey),
    ...twice('drills', contents.drills, (drill) => drill.id),
    ...twice('forecasts', forecasts, (forecast) => forecast.id),
    ...twice('selection', contents.selection, (line) => line.id),
    ...twice('people', contents.people, (person) => person.id),
    ...homeless('results', results),
    ...homeless('assignments', assignments),
    ...homeless('forecasts', forecasts),
    ...forecasts.flatMap(({ id: named, ...content }, index) =>
      forecastId(content) === named
        ? []
        : [problem(['forecasts', index, 'id'], { code: 'otherForecast', parts: { id: named } })],
    ),
    ...(['records', 'apart'] as const).flatMap((part) =>
      contents[part].flatMap(({ row }, index) =>
        row.event === id ? [] : [other([part, index, 'row', 'event'], row.event, row.id)],
      ),
    ),
  ]
}

/** The rows with the texts that are kept, each of which must have the hash that the file names. */
export async function hashedRows(
  contents: EventContents,
): Promise<{ texts: Map<string, string>; problems: Problem[] }> {
  const texts = new Map<string, string>()
  const problems: Problem[] = []
  for (const part of ['records', 'apart'] as const) {
    await unhurried<Pick<KeptRecord, 'row' | 'hash'>>(contents[part], ({ row, hash }, index) => {
      const { text, hash: own }: HashedRow = hashed(row)
      const wrong = disagreement(row)
      if (own !== hash) problems.push(problem([part, index], { code: 'otherHash', parts: { id: row.id } }))
      else if (wrong !== undefined) problems.push({ path: [part, index, 'row'], message: wrong })
      texts.set(hash, text)
    })
  }
  return { texts, problems }
}
