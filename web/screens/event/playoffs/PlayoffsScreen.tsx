import { Button } from '@mantine/core'
import { useState } from 'react'
import { Link } from 'wouter'
import { bracketOf, playedBracket } from '../../../../src/model/picks/playoffs/index.ts'
import { fewestTeams } from '../../../../src/model/picks/usual.ts'
import { useLive } from '../../../data/live.ts'
import { type SelectionLog, useSelection } from '../../../data/selection.ts'
import { Empty, Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import type { PlayoffsAsk } from '../../../worker/protocol.ts'
import { EventNav } from '../EventNav.tsx'
import { Notes } from '../picks/Notes.tsx'
import { formatOf } from '../picks/rules.ts'
import { useUs } from '../picks/Us.tsx'
import { type PicksGround, usePicksEvent } from '../picks/usePicksEvent.ts'
import { useNarrow } from '../useNarrow.ts'
import { type Formed, formedAlliances } from './alliances.ts'
import { Bracket } from './Bracket.tsx'
import { Chances, Threes } from './Chances.tsx'
import { Roles } from './Roles.tsx'
import { useAsked } from './useAsked.ts'
import '../picks/picks.css'

/** Brackets that are played: a chance is then known to half a percentage point. */
const runs = 10_000

/** Who wins the event from where it stands, who plays of four, and what each robot does. */
export default function PlayoffsScreen({ id }: { id: string }) {
  const texts = words().playoffs
  const { ground, error, refetch } = usePicksEvent(id)
  const selection = useSelection(id)
  useLive(id)
  const narrow = useNarrow()
  const trouble = error ?? (ground ? selection.error : null)
  if (trouble) return <Trouble title={texts.notLoaded} error={trouble} retry={refetch} />
  if (!ground || !selection.log) return <Loading what={texts.loading} />
  const { event } = ground.pack
  const formed = formedAlliances(ground.pack, selection.log.protocol.selection)
  const nav = <EventNav id={id} name={event.name} place="playoffs" />
  return (
    <div className="stack wide event-page">
      <div className="stack">
        <p className="small">
          <Link href={`/event/${id}`}>{event.name}</Link>
        </p>
        <h1>{texts.title}</h1>
        {!narrow && nav}
        <Notes log={selection.log} ground={ground} />
      </div>
      {formed && event.teams.length >= fewestTeams ? (
        <Desk ground={ground} log={selection.log} formed={formed} />
      ) : (
        <Empty title={texts.none}>
          <p>{texts.noneHow}</p>
          <p>
            <Link href={`/event/${id}/picks`}>{texts.toPicks}</Link>
          </p>
        </Empty>
      )}
      {narrow && nav}
    </div>
  )
}

function Desk({ ground, formed }: { ground: PicksGround; log: SelectionLog; formed: Formed }) {
  const { pack, of } = ground
  const { alliances } = formed
  const texts = words().playoffs
  const { us, choice } = useUs(pack)
  const format = formatOf(pack.event.playoff, alliances.length)
  const ties = bracketOf(format)
  const voided = new Set(pack.matches.flatMap(({ voids }) => voids ?? []))
  const matches = pack.matches.filter(({ id }) => !voided.has(id))
  const played = playedBracket({ ties, alliances, matches, results: pack.results })
  const number = alliances.findIndex((members) => us !== null && members.includes(us)) + 1
  const own = number > 0 ? number : null
  const ask: PlayoffsAsk = { of, format, alliances, standing: played.standing, runs }
  const key = JSON.stringify([of.key, format, alliances, played.standing])
  const chances = useAsked('playoffs', ask, key)
  const next = nextOpponent(played.ties, own)
  return (
    <>
      {choice}
      <p>
        {texts.known[formed.from]} {formed.running && texts.stillRunning}{' '}
        {texts.formats[format.format](alliances.length)}
      </p>
      <section className="sheet stack" aria-labelledby="chances" aria-busy={!chances.fresh}>
        <h2 id="chances">{texts.chances}</h2>
        {chances.error && <p role="alert">{chances.error.message}</p>}
        {chances.answer && chances.answer.length === alliances.length ? (
          <Chances chances={chances.answer} alliances={alliances} own={own} />
        ) : (
          !chances.error && <Loading what={texts.theChances} />
        )}
        <p className="soft small">{texts.chancesHow}</p>
      </section>
      <Bracket ties={ties} played={played} own={own} />
      {own !== null && alliances[own - 1]!.length > 3 && (
        <Fourth key={key} ask={ask} askKey={key} alliance={own} members={alliances[own - 1]!} />
      )}
      {own !== null && chances.answer && (
        <Roles
          pack={pack}
          ours={chances.answer[own - 1]?.robots ?? []}
          others={chances.answer.filter(({ alliance }) => alliance !== own)}
          next={next}
        />
      )}
    </>
  )
}

/** Of the next tie of ours in which both are known. */
function nextOpponent(
  ties: readonly { meets: readonly (number | null)[]; winner: number | null }[],
  own: number | null,
): number | null {
  const next = ties.find(({ meets, winner }) => own !== null && winner === null && meets.includes(own))
  return next?.meets.find((number) => number !== own) ?? null
}

/** Who of our four sits out. */
function Fourth(props: { ask: PlayoffsAsk; askKey: string; alliance: number; members: readonly string[] }) {
  const texts = words().playoffs
  const [asked, setAsked] = useState(false)
  const { ask, askKey, alliance, members } = props
  const threes = useAsked('substitutions', asked ? { ...ask, alliance } : null, `${askKey} ${asked}`)
  return (
    <section className="sheet stack" aria-labelledby="fourth">
      <h2 id="fourth">{texts.fourth}</h2>
      <p>{texts.fourthHow}</p>
      {threes.error && <p role="alert">{threes.error.message}</p>}
      {threes.answer ? (
        <Threes threes={threes.answer} members={members} />
      ) : asked && !threes.error ? (
        <Loading what={texts.theThrees} />
      ) : (
        <div className="no-print">
          <Button variant="default" onClick={() => setAsked(true)}>
            {texts.compareThrees}
          </Button>
        </div>
      )}
      <p className="soft small">{texts.fourthRules}</p>
    </section>
  )
}
