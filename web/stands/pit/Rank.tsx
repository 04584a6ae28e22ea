import { type PointerEvent, useRef, useState } from 'react'
import type { Alliance, Ranking } from '../../../src/model/scouting/types.ts'
import type { Me } from '../data/session.ts'
import type { Pack } from '../data/shapes.ts'
import { Choice } from '../parts/Choice.tsx'
import { useStanding } from '../parts/means.tsx'
import { matchName } from '../record/names.ts'
import { firstUnplayed, positions, slotAt } from '../record/seats.ts'
import { useMoreWords } from '../words/more.ts'
import { InEvent, Kept } from './InEvent.tsx'
import { keepRow } from './keep.ts'
import { ranked } from './order.ts'
import { useForm } from './useForm.ts'
import './pit.css'

/** An expert's order of an alliance's three robots. */
export default function Rank() {
  const { pit } = useMoreWords()
  return (
    <InEvent title={pit.rank.title}>
      {({ pack, me }) => (pack.matches.length > 0 ? <Form pack={pack} me={me} /> : <p>{pit.rank.noMatches}</p>)}
    </InEvent>
  )
}

interface Typed {
  /** Empty: the one that goes on. */
  match: string
  alliance: Alliance
  by: Ranking['by']
  order: readonly string[]
}

const fresh: Typed = { match: '', alliance: 'red', by: 'driving', order: [] }

function Form({ pack, me }: { pack: Pack; me: Me }) {
  const { pit } = useMoreWords()
  const texts = pit.rank
  const { database, sender } = useStanding()
  const form = useForm<Typed>(`rank/${pack.event.id}`, fresh)
  const [done, setDone] = useState(false)
  if (!form) return null
  const [typed, type] = form
  const { alliance, by } = typed
  const match = pack.matches.find((each) => each.id === typed.match) ?? firstUnplayed(pack.matches)!
  const teams = positions.map((position) => slotAt(match, { alliance, position }).team)
  // The schedule may have changed since: who does not play any more is in no order.
  const order = typed.order.every((team) => teams.includes(team)) ? typed.order : []
  const setOrder = (next: readonly string[]) => type({ ...typed, order: next })

  const keep = async () => {
    const body: Ranking = { match: match.id, scout: me.id, by, order: [...order] }
    await keepRow(database, { kind: 'ranking', body, event: pack.event.id, scout: me.id })
    sender.wake()
    type({ ...typed, order: [] })
    setDone(true)
  }
  if (done) return <Kept again={() => setDone(false)} />
  return (
    <>
      <p>{texts.intro}</p>
      <div className="field">
        <label htmlFor="match">{texts.match}</label>
        <select
          id="match"
          value={match.id}
          onChange={(event) => type({ ...typed, match: event.currentTarget.value, order: [] })}
        >
          {pack.matches.map((each) => (
            <option key={each.id} value={each.id}>
              {matchName(each)}
            </option>
          ))}
        </select>
      </div>
      <Choice
        label={texts.alliance}
        value={alliance}
        choose={(next) => type({ ...typed, alliance: next, order: [] })}
        options={(['red', 'blue'] as const).map((value) => ({ value, name: texts[value] }))}
      />
      <Choice
        label={texts.by}
        value={by}
        choose={(next) => type({ ...typed, by: next })}
        options={(['driving', 'defence'] as const).map((value) => ({ value, name: texts[value] }))}
      />
      <Robots teams={teams} order={order} change={setOrder} />
      <p role="status">{order.length > 0 && texts.order(order.join(' › '))}</p>
      <div className="line">
        <button type="button" disabled={order.length === 0} onClick={() => setOrder([])}>
          {texts.again}
        </button>
        <button
          type="button"
          className="strong tall"
          disabled={order.length < teams.length}
          onClick={() => void keep()}
        >
          {pit.keep}
        </button>
      </div>
    </>
  )
}

/** Three large fields: drawn over in one stroke, tapped, or pressed by keys, best first. */
function Robots(props: { teams: readonly string[]; order: readonly string[]; change(order: readonly string[]): void }) {
  const { teams, order } = props
  const texts = useMoreWords().pit.rank
  const list = useRef<HTMLUListElement>(null)
  const latest = useRef(order)
  latest.current = order
  const add = (team: string) => {
    latest.current = ranked(latest.current, team, teams)
    props.change(latest.current)
  }
  /** Which robot is under the finger; while one is pressed the browser tells of the one that was pressed first only. */
  const over = ({ clientX, clientY, buttons }: PointerEvent) => {
    if (buttons === 0) return
    const fields = [...(list.current?.children ?? [])]
    const index = fields.findIndex((field) => {
      const { left, right, top, bottom } = field.getBoundingClientRect()
      return clientX >= left && clientX <= right && clientY >= top && clientY <= bottom
    })
    const team = teams[index]
    if (team !== undefined) add(team)
  }
  return (
    <ul ref={list} className="ranks" onPointerDown={over} onPointerMove={over}>
      {teams.map((team) => {
        const place = order.indexOf(team) + 1
        return (
          <li key={team}>
            <button
              type="button"
              aria-pressed={place > 0}
              aria-label={texts.robot(team, place)}
              onClick={() => add(team)}
            >
              <span>{team}</span>
              <span className="place">{place > 0 && place}</span>
            </button>
          </li>
        )
      })}
    </ul>
  )
}
