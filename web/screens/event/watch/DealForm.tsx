import { Button, Checkbox, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { Assignment } from '../../../../src/model/scouting/types.ts'
import { type Dealt, previewAssignments } from '../../../data/events.ts'
import { words } from '../../../words/catalogue.ts'
import { listed } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { matchName } from '../names.ts'

/** Who is to watch, for how long without a break, and from which match on; the server shares the seats out. */
export function DealForm(props: {
  page: EventPage
  edited: Assignment[] | null
  onDealt: (assignments: Assignment[]) => void
}) {
  const { page } = props
  const texts = words().event.watch
  const { people } = page.watching
  const [chosen, setChosen] = useState<ReadonlySet<string> | null>(null)
  const [longest, setLongest] = useState('6')
  const [rest, setRest] = useState('2')
  const [from, setFrom] = useState('')
  const [keep, setKeep] = useState(false)
  const [dealt, setDealt] = useState<Dealt | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const watchers = chosen ?? new Set(people.filter(({ role }) => role === 'scout').map(({ id }) => id))
  const numberOf = (text: string) =>
    /^\d{1,3}$/.test(text) && Number(text) >= 1 && Number(text) <= 100 ? Number(text) : null
  const [most, off] = [numberOf(longest), numberOf(rest)]
  const over = new Set(page.results.flatMap(({ match, result }) => (result === null ? [] : [match])))
  const open = page.schedule.matches.filter(({ match }) => !over.has(match.id))
  const share = async () => {
    if (most === null || off === null) return
    setTrouble(null)
    setBusy(true)
    try {
      const answer = await previewAssignments(page.event.id, {
        people: people.filter(({ id }) => watchers.has(id)).map(({ id }) => id),
        longest: most,
        rest: off,
        keep,
        ...(from === '' ? {} : { from }),
      })
      setDealt(answer)
      props.onDealt(answer.assignments)
    } catch (error) {
      setTrouble((error as Error).message)
    } finally {
      setBusy(false)
    }
  }
  return (
    <section className="sheet stack no-print" aria-labelledby="deal">
      <h2 id="deal">{texts.deal}</h2>
      {people.length === 0 ? (
        <p>{texts.noPeople}</p>
      ) : (
        <>
          <p>{texts.dealHelp}</p>
          <fieldset>
            <legend>{texts.who}</legend>
            <div className="row">
              {people.map(({ id, nickname, role }) => (
                <Checkbox
                  key={id}
                  label={`${nickname} (${texts.roles[role as keyof typeof texts.roles] ?? role})`}
                  checked={watchers.has(id)}
                  onChange={(event) => {
                    const next = new Set(watchers)
                    if (event.currentTarget.checked) next.add(id)
                    else next.delete(id)
                    setChosen(next)
                  }}
                />
              ))}
            </div>
          </fieldset>
          <div className="row" style={{ alignItems: 'start' }}>
            <TextInput
              label={texts.longest}
              inputMode="numeric"
              value={longest}
              error={most === null ? texts.noNumber : null}
              onChange={(event) => setLongest(event.currentTarget.value.trim())}
            />
            <TextInput
              label={texts.rest}
              inputMode="numeric"
              value={rest}
              error={off === null ? texts.noNumber : null}
              onChange={(event) => setRest(event.currentTarget.value.trim())}
            />
            <NativeSelect
              label={texts.from}
              value={from}
              data={[
                { value: '', label: texts.fromNext },
                ...open.map(({ match }) => ({ value: match.id, label: matchName(match) })),
              ]}
              onChange={(event) => setFrom(event.currentTarget.value)}
            />
            <Checkbox label={texts.keep} checked={keep} onChange={(event) => setKeep(event.currentTarget.checked)} />
          </div>
          <div>
            <Button
              disabled={watchers.size === 0 || most === null || off === null || open.length === 0}
              loading={busy}
              onClick={() => void share()}
            >
              {texts.share}
            </Button>
          </div>
        </>
      )}
      {trouble && (
        <p role="alert" className="loss">
          {trouble}
        </p>
      )}
      {dealt && props.edited && <Told page={page} dealt={dealt} />}
    </section>
  )
}

/** How even it came out, and what could not be kept. */
function Told({ page, dealt }: { page: EventPage; dealt: Dealt }) {
  const texts = words().event.watch
  const names = new Map(page.watching.people.map(({ id, nickname }) => [id, nickname]))
  const nameOf = (id: string) => names.get(id) ?? id
  const counts = dealt.loads.map(({ matches }) => matches)
  const broken = [...new Set(dealt.broken.map(({ person }) => nameOf(person)))]
  return (
    <div role="status">
      <p>{texts.load(Math.min(...counts), Math.max(...counts))}</p>
      {dealt.empty > 0 && <p className="loss">{texts.empties(dealt.empty)}</p>}
      {broken.length > 0 && <p className="loss">{texts.broken(listed(broken), dealt.enough)}</p>}
    </div>
  )
}
