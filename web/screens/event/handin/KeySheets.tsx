import { Button, NativeSelect, TextInput } from '@mantine/core'
import { type KeyboardEvent, useRef, useState } from 'react'
import { type Phase, phases, type Row } from '../../../../src/model/scouting/types.ts'
import type { StandsPack } from '../../../codes/standsPack.ts'
import { thisDevice } from '../../../data/device.ts'
import { useTyped } from '../../../data/useTyped.ts'
import { madeUuid } from '../../../data/uuid.ts'
import { words } from '../../../words/catalogue.ts'
import { rowName } from '../matchNames.ts'
import { fieldName } from '../sheets/fieldName.ts'
import { sheetFields } from '../sheets/fields.ts'
import { nextSequence } from './keptRows.ts'
import { type KeyedProblem, keyedRow, readKeyed, type Typed } from './keyed.ts'
import { useKeyed } from './useKeyed.ts'

type Problems = { [key: string]: KeyedProblem }

/** A printed sheet, keyed box after box in its own order: digits, and Enter or Tab to the next. */
export function KeySheets(props: { pack: StandsPack; bring(rows: readonly Row[]): Promise<boolean> }) {
  const { pack } = props
  const { event, game, matches, people } = pack
  const texts = words().handin.keying
  const fields = sheetFields(game.body)
  const form = useRef<HTMLFormElement>(null)
  const [phase, setPhase] = useState<Phase>('qualification')
  const [scout, setScout] = useState(people[0]?.id ?? 'paper')
  // Half a sheet is typed again sooner than it is found again.
  const { typed, type: setTyped } = useTyped<Typed>(`sheet/${event.id}`, {})
  const [problems, setProblems] = useState<Problems>({})
  const [last, setLast] = useState<{ row: Row; typed: Typed } | null>(null)
  const keyed = useKeyed(event.id, props.bring)

  const toFirst = (name: string) => form.current?.querySelector<HTMLInputElement>(`[name="${name}"]`)?.focus()
  const save = () => {
    const head = { phase, match: typed['match'] ?? '', robot: typed['robot'] ?? '' }
    const read = readKeyed({ fields, game: game.body, matches }, head, typed)
    if ('problems' in read) {
      setProblems(read.problems)
      const first = ['match', 'robot', ...fields.map(({ key }) => key)].find((key) => read.problems[key])
      return first && toFirst(first)
    }
    const way = { id: madeUuid(), event: event.id, device: thisDevice(), sequence: nextSequence(), scout }
    const row = keyedRow(read.keyed, { ...way, made: new Date().toISOString(), game: game.revision })
    keyed.add(row)
    setLast({ row, typed })
    setProblems({})
    // The next sheet is of the same match, as a rule.
    setTyped({ match: typed['match'] ?? '' })
    toFirst('robot')
  }
  const takeBack = () => {
    if (!last) return
    keyed.remove(last.row.id)
    setTyped(last.typed)
    setLast(null)
    toFirst('match')
  }
  const onKey = (press: KeyboardEvent<HTMLFormElement>) => {
    if (press.key !== 'Enter' || !(press.target instanceof HTMLInputElement)) return
    press.preventDefault()
    const inputs = [...(form.current?.querySelectorAll<HTMLInputElement>('input') ?? [])]
    const next = inputs[inputs.indexOf(press.target) + 1]
    if (next) next.focus()
    else save()
  }
  const input = (key: string, label: React.ReactNode, digits: boolean) => (
    <TextInput
      key={key}
      name={key}
      className={digits ? undefined : 'key-wide'}
      label={label}
      inputMode={digits ? 'numeric' : undefined}
      autoComplete="off"
      value={typed[key] ?? ''}
      error={problems[key] ? texts.problems[problems[key]] : null}
      onFocus={(focus) => focus.currentTarget.select()}
      onChange={(change) => setTyped({ ...typed, [key]: change.currentTarget.value })}
    />
  )
  const waits = last && keyed.rows.some(({ id }) => id === last.row.id)
  return (
    <section className="sheet stack" aria-labelledby="key-sheets">
      <h2 id="key-sheets">{texts.title}</h2>
      <p>{texts.help}</p>
      <div className="row">
        <NativeSelect
          label={texts.phase}
          value={phase}
          data={phases.map((value) => ({ value, label: texts.phases[value] }))}
          onChange={(change) => setPhase(change.currentTarget.value as Phase)}
        />
        <NativeSelect
          label={texts.scout}
          value={scout}
          data={[
            ...people.map(({ id, nickname }) => ({ value: id, label: nickname })),
            { value: 'paper', label: texts.nobody },
          ]}
          onChange={(change) => setScout(change.currentTarget.value)}
        />
      </div>
      <p className="small soft">
        {game.body.finishes.map(({ name }, index) => texts.finish(index + 1, name)).join(' · ')}
      </p>
      <form ref={form} className="key-form" noValidate onKeyDown={onKey} onSubmit={(submit) => submit.preventDefault()}>
        {input('match', texts.match, true)}
        {input('robot', texts.robot, true)}
        {fields.map((field, index) =>
          input(
            field.key,
            <>
              <span className="key-number" aria-hidden="true">
                {index + 1}
              </span>
              {fieldName(field)}
            </>,
            field.kind !== 'note',
          ),
        )}
      </form>
      <div className="row">
        <Button onClick={save}>{texts.save}</Button>
        {keyed.rows.length > 0 && (
          <Button variant="default" onClick={() => void keyed.flush()}>
            {texts.flush(keyed.rows.length)}
          </Button>
        )}
      </div>
      <p role="status">
        {last && (
          <>
            {texts.saved(rowName(pack, last.row), scoredIn(last.row))}{' '}
            {waits && (
              <button type="button" className="opens" onClick={takeBack}>
                {texts.takeBack}
              </button>
            )}
          </>
        )}
      </p>
    </section>
  )
}

const scoredIn = (row: Row): number =>
  row.kind === 'observation' ? (row.body.counts ?? []).reduce((sum, { scored }) => sum + scored, 0) : 0
