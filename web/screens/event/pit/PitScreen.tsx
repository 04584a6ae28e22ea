import { NumberInput } from '@mantine/core'
import { Link } from 'wouter'
import { inOrder, voided } from '../../../../src/model/event/order.ts'
import type { Alliance, Match } from '../../../../src/model/scouting/types.ts'
import { type EventPack, useEventPack, useTakeAlong } from '../../../data/eventPack.ts'
import { useLive } from '../../../data/live.ts'
import { Cautions } from '../../../shell/Cautions.tsx'
import { Empty, Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { listed, moment } from '../../../words/format.ts'
import { EventNav } from '../EventNav.tsx'
import { matchName } from '../matchNames.ts'
import { allianceName, timeOf } from '../names.ts'
import { useNarrow } from '../useNarrow.ts'
import { BrokenList } from './BrokenList.tsx'
import { FieldSays } from './FieldSays.tsx'
import { useQueueing } from './queueing.ts'
import './pit.css'

/** Between matches: next match, queue time, bumpers, battery, what broke, what the field check says. */
export default function PitScreen({ id }: { id: string }) {
  const texts = words().pitBoard
  useLive(id)
  const narrow = useNarrow()
  useTakeAlong(id)
  const packed = useEventPack(id)
  if (packed.error && !packed.data)
    return <Trouble title={texts.trouble} error={packed.error} retry={() => void packed.refetch()} />
  if (!packed.data) return <Loading what={texts.what} />
  const { pack, kept, asking } = packed.data
  const { event, own } = pack
  const [team] = own
  const nav = <EventNav id={event.id} name={event.name} place="pit" />
  return (
    <div className="stack wide">
      <div className="stack">
        <p className="small">
          <Link href={`/event/${event.id}`}>{event.name}</Link>
        </p>
        <h1>
          {texts.title}
          {team !== undefined && ` · ${texts.team(team)}`}
        </h1>
        {!narrow && nav}
        {kept && <p role="status">{texts.kept(moment(pack.madeAt))}</p>}
        {asking && <p role="status">{words().briefing.asking(moment(pack.madeAt))}</p>}
      </div>
      {team === undefined ? (
        <Empty title={words().briefing.noOwn}>
          <p>
            {words().briefing.noOwnHow} <Link href={`/event/${event.id}/teams`}>{words().briefing.toTeams}</Link>
          </p>
        </Empty>
      ) : (
        <>
          <Next pack={pack} team={team} />
          <div className="pit-parts">
            <BrokenList pack={pack} team={team} />
            <FieldSays pack={pack} team={team} />
          </div>
          <Cautions which={['energy', 'air']} />
        </>
      )}
      {narrow && nav}
    </div>
  )
}

function nextOf({ matches, results }: EventPack, team: string): { match: Match; alliance: Alliance } | null {
  const over = new Set([...results.map(({ match }) => match), ...voided(matches)])
  for (const match of matches.toSorted(inOrder)) {
    if (over.has(match.id)) continue
    for (const alliance of ['red', 'blue'] as const)
      if (match[alliance].some((slot) => slot.team === team)) return { match, alliance }
  }
  return null
}

/** The day's clock so many minutes earlier, as the schedule writes it. */
function earlier({ time }: Match, minutes: number): string | null {
  if (time === undefined) return null
  const [hours, rest] = [Number(time.slice(11, 13)), Number(time.slice(14, 16))]
  const at = (((hours * 60 + rest - minutes) % 1440) + 1440) % 1440
  return `${String(Math.floor(at / 60)).padStart(2, '0')}:${String(at % 60).padStart(2, '0')}`
}

function Next({ pack, team }: { pack: EventPack; team: string }) {
  const texts = words().pitBoard
  const queueing = useQueueing()
  const next = nextOf(pack, team)
  if (!next)
    return (
      <Empty title={texts.none}>
        <p>{words().briefing.noMatchHow}</p>
      </Empty>
    )
  const { match, alliance } = next
  const own = match[alliance]
  const index = own.findIndex((slot) => slot.team === team)
  const position = own[index]?.position ?? index + 1
  const partners = own.filter((slot) => slot.team !== team).map((slot) => slot.team)
  const others = match[alliance === 'red' ? 'blue' : 'red'].map((slot) => slot.team)
  const at = timeOf(match, pack.event.startsOn)
  const queue = earlier(match, queueing.minutes)
  return (
    <section className="sheet pit-next" aria-label={texts.next}>
      <p className="pit-large">
        {matchName(match)}
        {at !== '' && ` ${texts.at} ${at}`}
      </p>
      <p className="pit-large">
        <strong>{queue === null ? texts.noTime : texts.queue(queue)}</strong>
      </p>
      <p className={`pit-large pit-bumpers pit-${alliance}`}>
        {texts.bumpers}: <strong>{allianceName(alliance)}</strong> · {texts.place(position)}
      </p>
      <p>
        {texts.with(listed(partners))}, {texts.against(listed(others))}
      </p>
      <p className="pit-battery">
        <strong>{texts.battery}:</strong> {texts.batteryHow}
      </p>
      <NumberInput
        className="pit-lead no-print"
        label={texts.lead}
        description={texts.leadHelp}
        min={0}
        max={90}
        allowDecimal={false}
        clampBehavior="none"
        value={queueing.typed}
        error={queueing.wrong ? texts.leadWrong : null}
        onChange={queueing.type}
      />
    </section>
  )
}
