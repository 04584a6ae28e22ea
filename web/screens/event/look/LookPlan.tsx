import { Button, Checkbox, TextInput } from '@mantine/core'
import { useState } from 'react'
import { Link } from 'wouter'
import { seatOf } from '../../../../src/model/event/seats.ts'
import { useEventChanges } from '../../../data/events.ts'
import { askLooks, type Looks } from '../../../data/looks.ts'
import { useTyped } from '../../../data/useTyped.ts'
import { words } from '../../../words/catalogue.ts'
import type { EventPage } from '../EventFrame.tsx'
import { seatName } from '../names.ts'

interface Props {
  page: EventPage
  team: string
  unwatched: number
  named(id: string): string
}

const numberOf = (text: string): number | null =>
  /^\d{1,3}$/.test(text) && Number(text) >= 1 && Number(text) <= 100 ? Number(text) : null

/** Looks shared out among people with their breaks, seen before they are taken over into who watches whom. */
export function LookPlan({ page, team, unwatched, named }: Props) {
  const texts = words().look
  const { id } = page.event
  const { people, mark } = page.watching
  const { assign } = useEventChanges(id)
  const { typed, type } = useTyped<{ people: string[]; longest: string; rest: string }>(`looks/${id}`, {
    people: [],
    longest: '6',
    rest: '2',
  })
  const [plan, setPlan] = useState<Looks | null>(null)
  const [taken, setTaken] = useState<Looks['assignments'] | null>(null)
  const [busy, setBusy] = useState(false)
  const [trouble, setTrouble] = useState<string | null>(null)
  const [longest, rest] = [numberOf(typed.longest), numberOf(typed.rest)]
  const chosen = typed.people.filter((person) => people.some((each) => each.id === person))
  const set = (more: Partial<typeof typed>) => {
    setPlan(null)
    type({ ...typed, ...more })
  }
  const propose = async () => {
    if (longest === null || rest === null) return
    setTrouble(null)
    setTaken(null)
    setBusy(true)
    try {
      setPlan(await askLooks(id, { team, people: chosen, longest, rest }))
    } catch (error) {
      setTrouble((error as Error).message)
    } finally {
      setBusy(false)
    }
  }
  const save = async (assignments: Looks['assignments'], of: string, back: boolean) => {
    setTrouble(null)
    try {
      await assign.mutateAsync({ mark: of, assignments })
      setPlan(null)
      setTaken(back ? null : assignments)
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  return (
    <section className="sheet stack" aria-labelledby="look-plan">
      <h2 id="look-plan">{texts.plan}</h2>
      <p>{texts.planHow}</p>
      {people.length === 0 ? (
        <p>
          {texts.nobody} <Link href="/people">{texts.toPeople}</Link>
        </p>
      ) : unwatched === 0 ? (
        <p>
          {texts.allWatched} <Link href={`/event/${id}/watch`}>{texts.toWatch}</Link>
        </p>
      ) : (
        <div className="stack no-print">
          <fieldset>
            <legend>{texts.who}</legend>
            <div className="row">
              {people.map(({ id: person, nickname }) => (
                <Checkbox
                  key={person}
                  label={nickname}
                  checked={chosen.includes(person)}
                  onChange={({ currentTarget: { checked } }) =>
                    set({ people: checked ? [...chosen, person] : chosen.filter((each) => each !== person) })
                  }
                />
              ))}
            </div>
          </fieldset>
          <div className="row" style={{ alignItems: 'start' }}>
            <TextInput
              label={texts.longest}
              inputMode="numeric"
              value={typed.longest}
              error={longest === null ? texts.badNumber : null}
              onChange={({ currentTarget: { value } }) => set({ longest: value.trim() })}
            />
            <TextInput
              label={texts.rest}
              inputMode="numeric"
              value={typed.rest}
              error={rest === null ? texts.badNumber : null}
              onChange={({ currentTarget: { value } }) => set({ rest: value.trim() })}
            />
          </div>
          <div>
            <Button
              disabled={chosen.length === 0 || longest === null || rest === null}
              loading={busy}
              onClick={() => void propose()}
            >
              {texts.propose}
            </Button>
          </div>
        </div>
      )}
      {trouble && (
        <p role="alert" className="loss">
          {trouble}
        </p>
      )}
      {plan && <Proposed page={page} plan={plan} named={named} />}
      {plan && plan.assignments.length > 0 && (
        <div className="row no-print">
          <Button loading={assign.isPending} onClick={() => void save(plan.assignments, plan.mark, false)}>
            {texts.take}
          </Button>
          <Button variant="default" onClick={() => setPlan(null)}>
            {texts.discard}
          </Button>
          <Button variant="default" onClick={() => window.print()}>
            {texts.print}
          </Button>
        </div>
      )}
      {taken && (
        <p role="status">
          {texts.taken(taken.length)} <Link href={`/event/${id}/watch`}>{texts.toWatch}</Link>{' '}
          <button
            type="button"
            className="opens"
            onClick={() =>
              void save(
                taken.map((each) => ({ ...each, person: null })),
                mark,
                true,
              )
            }
          >
            {texts.undo}
          </button>
        </p>
      )}
    </section>
  )
}

function Proposed({ page, plan, named }: { page: EventPage; plan: Looks; named(id: string): string }) {
  const texts = words().look
  if (plan.looks.length === 0) return <p role="status">{texts.nothing}</p>
  const people = new Map(page.watching.people.map(({ id, nickname }) => [id, nickname]))
  const matches = new Map(page.schedule.matches.map(({ match }) => [match.id, match]))
  const seatSaid = (match: string, team: string) => {
    const of = matches.get(match)
    const seat = of && seatOf(of, team)
    return seat ? seatName(seat) : '–'
  }
  return (
    <div role="status">
      <p>{texts.proposed(plan.looks.length)}</p>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.planTable}>
        <table className="tide">
          <thead>
            <tr>
              {[texts.match, texts.person, texts.watches, texts.seat].map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {plan.looks.map(({ match, team, person }) => (
              <tr key={`${match} ${team}`}>
                <th scope="row">{named(match)}</th>
                <td>{people.get(person) ?? person}</td>
                <td>{team}</td>
                <td>
                  {seatSaid(match, team)} <span className="slot-mark">{texts.now}</span>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </div>
  )
}
