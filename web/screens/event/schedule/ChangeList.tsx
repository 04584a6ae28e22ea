import type { MatchChange, SeatChange } from '../../../../src/model/event/changes.ts'
import { matchKey } from '../../../../src/model/event/order.ts'
import type { Match } from '../../../../src/model/scouting/types.ts'
import { words } from '../../../words/catalogue.ts'
import { matchName, seatName, slotMark, timeOf } from '../names.ts'

/** What would change in the schedule, match by match, with what becomes of records and results. */
export function ChangeList(props: { changes: readonly MatchChange[]; same: number; matches: readonly Match[] }) {
  const texts = words().event.changes
  const { changes, same } = props
  const added = changes.filter(({ kind }) => kind === 'added')
  const voidedBy = (change: MatchChange): string[] => {
    const of = 'before' in change && change.before.voids === change.match.voids ? undefined : change.match.voids
    const match = change.kind === 'removed' ? undefined : props.matches.find(({ id }) => id === of)
    return match ? [texts.voids(matchName(match))] : []
  }
  const others = changes.filter((change) => change.kind !== 'added' || voidedBy(change).length > 0)
  return (
    <section className="stack" aria-label={texts.title}>
      <h3>{texts.title}</h3>
      {changes.length === 0 && <p role="status">{texts.nothing(same)}</p>}
      {added.length > 0 && (
        <p>{texts.added(added.length, matchName(added[0]!.match), matchName(added.at(-1)!.match))}</p>
      )}
      {others.length > 0 && (
        <ul>
          {others.map((change) => (
            <li key={change.match.id}>
              <strong>{matchName(change.match)}</strong>: {[...told(change), ...voidedBy(change)].join(' ')}
            </li>
          ))}
        </ul>
      )}
      {changes.length > 0 && same > 0 && <p className="soft">{texts.same(same)}</p>}
    </section>
  )
}

function told(change: MatchChange): string[] {
  const texts = words().event.changes
  if (change.kind === 'added') return []
  if (change.kind === 'removed') return [texts.removed, ...attached(change.records, change.result)]
  const { before, match, teams, slots, result } = change
  const times = [before, match].map((each) => timeOf(each, undefined) || texts.noTime) as [string, string]
  return [
    ...(matchKey(before) === matchKey(match) ? [] : [texts.renamed(matchName(before))]),
    ...(times[0] === times[1] ? [] : [texts.moved(...times)]),
    ...teams.map((each) => texts.team(seatName(each.seat), each.from, each.to) + records(each)),
    ...slots.map(({ seat, team, to }) => texts.slot(seatName(seat), team, slotMark({ team, ...to }) || texts.plays)),
    ...(result && teams.length > 0 ? [texts.keepsResult] : []),
  ]
}

const records = ({ follow, stay, from, to }: SeatChange): string => {
  const texts = words().event.changes
  return (follow > 0 ? ` ${texts.follow(follow, to)}` : '') + (stay > 0 ? ` ${texts.stay(stay, from)}` : '')
}

function attached(count: number, result: boolean): string[] {
  const texts = words().event.changes
  return count > 0 || result ? [texts.attached(count, result)] : []
}
