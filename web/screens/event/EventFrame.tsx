import type { ReactNode } from 'react'
import { Link } from 'wouter'
import type { Game } from '../../../src/model/documents/types.ts'
import type { StoredResult } from '../../../src/store/types.ts'
import { Unreachable } from '../../data/api.ts'
import { type Stored, useStored } from '../../data/documents.ts'
import { useTakeAlong } from '../../data/eventPack.ts'
import { type Schedule, useIsLead, useResults, useSchedule, useWatching, type Watching } from '../../data/events.ts'
import { useLive } from '../../data/live.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { day } from '../../words/format.ts'
import { AfterPart } from './after/AfterPart.tsx'
import { DoubtsPart } from './doubts/DoubtsPart.tsx'
import { EventNav } from './EventNav.tsx'
import { EstimatesPart } from './estimates/EstimatesPart.tsx'
import { ExchangePart } from './exchange/ExchangePart.tsx'
import { FieldPart } from './field/FieldPart.tsx'
import { ForecastsPart } from './forecasts/ForecastsPart.tsx'
import { LookPart } from './look/LookPart.tsx'
import { RankingPart } from './ranking/RankingPart.tsx'
import { ResultsPart } from './results/ResultsPart.tsx'
import { type Entered, useEntered } from './results/useEntered.ts'
import { SchedulePart } from './schedule/SchedulePart.tsx'
import { useEdit } from './schedule/useEdit.ts'
import { SeedsPart } from './seeds/SeedsPart.tsx'
import { TeamsPart } from './teams/TeamsPart.tsx'
import { WatchPart } from './watch/WatchPart.tsx'

/** What every part of an event's page knows. */
export interface EventPage {
  event: Stored<'event'>
  game: Game
  /** Of the game's document. */
  revision: number
  schedule: Schedule
  results: StoredResult[]
  watching: Watching
  /** Whether whoever looks may change it. */
  lead: boolean
  /** Edits of the schedule and results that come in, with the way back from the last of each: it stays while one goes from part to part. */
  edit: ReturnType<typeof useEdit>
  entered: Entered
}

const parts: { readonly [name: string]: (page: EventPage) => ReactNode } = {
  schedule: (page) => <SchedulePart {...page} />,
  results: (page) => <ResultsPart {...page} />,
  ranking: (page) => <RankingPart {...page} />,
  watch: (page) => <WatchPart {...page} />,
  teams: (page) => <TeamsPart key={page.event.revision} {...page} />,
  doubts: (page) => <DoubtsPart {...page} />,
  estimates: (page) => <EstimatesPart {...page} />,
  field: (page) => <FieldPart {...page} />,
  forecasts: (page) => <ForecastsPart {...page} />,
  look: (page) => <LookPart {...page} />,
  seeds: (page) => <SeedsPart {...page} />,
  after: (page) => <AfterPart {...page} />,
  exchange: (page) => <ExchangePart {...page} />,
}

const partNames = [
  'schedule',
  'results',
  'ranking',
  'watch',
  'teams',
  'doubts',
  'estimates',
  'field',
  'forecasts',
  'look',
  'seeds',
  'after',
  'exchange',
] as const

/** Where one can go on without the server. */
function KeptPages({ id }: { id: string }) {
  const texts = words().event
  return (
    <>
      <p>{texts.withoutServer}</p>
      <ul>
        {(['briefing', 'pit', 'picks', 'playoffs'] as const).map((place) => (
          <li key={place}>
            <Link href={`/event/${id}/${place}`}>{texts.places[place]}</Link>
          </li>
        ))}
      </ul>
    </>
  )
}

/** An event: its parts, of which one is shown. */
export function EventFrame(props: { id: string; part: string | undefined }) {
  const { id } = props
  const event = useStored('event', id)
  const game = useStored('game', event.data?.body.game ?? null)
  const [schedule, results, watching] = [useSchedule(id), useResults(id), useWatching(id)]
  const lead = useIsLead()
  useLive(id)
  useTakeAlong(id)
  const edit = useEdit(id)
  const entered = useEntered(id, { matches: schedule.data?.matches ?? [], results: results.data ?? [] })
  const texts = words().event
  const all = [event, game, schedule, results, watching]
  const error = all.find((each) => each.error && !each.data)?.error
  if (error) {
    const again = () => {
      for (const each of all) void each.refetch()
    }
    return (
      <Trouble title={texts.notLoaded} error={error} retry={again}>
        {error instanceof Unreachable ? <KeptPages id={id} /> : <Link href="/event">{texts.list.title}</Link>}
      </Trouble>
    )
  }
  if (!event.data || !game.data || !schedule.data || !results.data || !watching.data)
    return <Loading what={texts.loading} />
  const part = partNames.find((name) => name === props.part) ?? 'schedule'
  const { name, startsOn } = event.data.body
  const page: EventPage = {
    event: event.data,
    game: game.data.body,
    revision: game.data.revision,
    schedule: schedule.data,
    results: results.data,
    watching: watching.data,
    lead,
    edit,
    entered,
  }
  return (
    <div className="stack wide event-page">
      <div className="stack">
        <p className="small no-print">
          <Link href="/event">{texts.list.title}</Link>
        </p>
        <h1>{name}</h1>
        <p className="soft">
          {startsOn && !Number.isNaN(Date.parse(startsOn)) ? `${day(startsOn)} · ` : ''}
          {texts.about(page.event.body.teams.length, page.schedule.matches.length)}
        </p>
        <EventNav id={id} name={name} place={part} />
      </div>
      {parts[part]!(page)}
    </div>
  )
}
