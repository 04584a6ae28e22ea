import { NativeSelect } from '@mantine/core'
import { Link, useLocation, useSearch } from 'wouter'
import { inOrder, voided } from '../../../../src/model/event/order.ts'
import { alliances, type Match } from '../../../../src/model/scouting/types.ts'
import { type EventPack, type Packed, useEventPack, useMayPack, useTakeAlong } from '../../../data/eventPack.ts'
import { useLive } from '../../../data/live.ts'
import { useSession } from '../../../data/session.ts'
import { Empty, Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { moment } from '../../../words/format.ts'
import { EventNav } from '../EventNav.tsx'
import { matchName } from '../matchNames.ts'
import { allianceName } from '../names.ts'
import { useNarrow } from '../useNarrow.ts'
import { Brief } from './Brief.tsx'
import './briefing.css'

/** Minutes before a match: who does what, when to go, whom to watch. */
export default function BriefingScreen({ id }: { id: string }) {
  const texts = words().briefing
  const may = useMayPack()
  const { isSuccess: known } = useSession()
  useLive(id)
  useTakeAlong(id)
  const packed = useEventPack(id)
  if (known && !may && packed.error)
    return (
      <Empty title={texts.notYours}>
        <p>{texts.notYoursHow}</p>
      </Empty>
    )
  if (packed.error && !packed.data)
    return <Trouble title={texts.trouble} error={packed.error} retry={() => void packed.refetch()} />
  if (!packed.data) return <Loading what={texts.what} />
  return <Desk packed={packed.data} />
}

/** Matches that have no result and are not played anew, in the order of play. */
function comingOf({ matches, results }: EventPack): Match[] {
  const over = new Set([...results.map(({ match }) => match), ...voided(matches)])
  return matches.filter(({ id }) => !over.has(id)).toSorted(inOrder)
}

const sideWith = ({ red, blue }: Match, teams: readonly string[]) =>
  (
    [
      ['red', red],
      ['blue', blue],
    ] as const
  ).find(([, side]) => side.some(({ team }) => teams.includes(team)))?.[0] ?? null

function Desk({ packed }: { packed: Packed }) {
  const texts = words().briefing
  const { pack, kept, asking } = packed
  const { event, own } = pack
  const search = new URLSearchParams(useSearch())
  const [, go] = useLocation()
  const coming = comingOf(pack)
  const next = coming.find((match) => sideWith(match, own) !== null) ?? coming[0]
  const match = pack.matches.find(({ id }) => id === search.get('match')) ?? next
  const alliance = alliances.find((each) => each === search.get('side')) ?? (match && sideWith(match, own)) ?? 'red'
  // On a phone the plan itself stands on the first screen, and the ways through the event after it.
  const narrow = useNarrow()
  const nav = <EventNav id={event.id} name={event.name} place="briefing" />
  const choose = (of: { match?: string; side?: string }) =>
    go(`/event/${event.id}/briefing?${new URLSearchParams({ match: match?.id ?? '', side: alliance, ...of })}`, {
      replace: true,
    })
  return (
    <div className="stack wide">
      <div className="stack no-print">
        <p className="small">
          <Link href={`/event/${event.id}`}>{event.name}</Link>
        </p>
        <h1>{texts.title}</h1>
        {!narrow && nav}
        {kept && (
          <p role="status" className="brief-kept">
            {texts.kept(moment(pack.madeAt))}
          </p>
        )}
        {asking && (
          <p role="status" className="brief-kept">
            {texts.asking(moment(pack.madeAt))}
          </p>
        )}
        {own.length === 0 && (
          <p>
            <strong>{texts.noOwn}</strong> {texts.noOwnHow}{' '}
            <Link href={`/event/${event.id}/teams`}>{texts.toTeams}</Link>
          </p>
        )}
        {match && (
          <div className="row brief-choice">
            <NativeSelect
              label={texts.match}
              value={match.id}
              data={[...new Set([match, ...coming])].toSorted(inOrder).map((each) => ({
                value: each.id,
                label: sideWith(each, own) === null ? matchName(each) : texts.ours(matchName(each)),
              }))}
              onChange={(change) => {
                const chosen = pack.matches.find(({ id }) => id === change.currentTarget.value)
                choose({ match: change.currentTarget.value, side: (chosen && sideWith(chosen, own)) ?? 'red' })
              }}
            />
            <NativeSelect
              label={texts.side}
              value={alliance}
              data={alliances.map((value) => ({ value, label: allianceName(value) }))}
              onChange={(change) => choose({ side: change.currentTarget.value })}
            />
          </div>
        )}
      </div>
      {match ? (
        <Brief key={`${match.id} ${alliance}`} packed={packed} match={match} alliance={alliance} />
      ) : (
        <Empty title={texts.noMatch}>
          <p>{texts.noMatchHow}</p>
        </Empty>
      )}
      {narrow && nav}
    </div>
  )
}
