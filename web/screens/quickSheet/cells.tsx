import { type ReactNode, useId } from 'react'
import type { QuickLeg } from '../../../src/model/documents/quickSheet.ts'
import type { Place } from '../../data/difference.ts'
import { valueAt } from '../../data/place.ts'
import { placeKey, problemAt, useEdit } from '../../shell/fields/EditContext.tsx'
import { type NumberRules, readNumber, writeNumber } from '../../shell/fields/parse.ts'
import { words } from '../../words/catalogue.ts'
import { problemWords } from '../../words/problems.ts'
import { readTime, writeTime } from './times.ts'

/** A field in a table's cell: its label stands in the column's head, and beside it where there is no head. */
function Cell(props: {
  label: string
  way: string
  place: Place
  shown: string
  error: string | null
  className?: string
  numeric?: boolean
  hint?: ReactNode
  onText(text: string): void
  onLeave(): void
}) {
  const id = useId()
  const { readOnly } = useEdit()
  return (
    <div className={props.className ?? 'cell'} data-shown={props.shown}>
      <label htmlFor={id}>
        <span className="cell-label">{props.label}</span>
        <span className="visually-hidden">{words().quickSheet.ways.of('', props.way)}</span>
      </label>
      <input
        id={id}
        value={props.shown}
        readOnly={readOnly}
        inputMode={props.numeric ? 'decimal' : undefined}
        autoComplete="off"
        aria-invalid={props.error !== null}
        aria-describedby={props.error ? `${id}-error` : undefined}
        data-place={placeKey(props.place)}
        onChange={(event) => props.onText(event.currentTarget.value)}
        onBlur={props.onLeave}
      />
      {props.hint}
      {props.error && (
        <span id={`${id}-error`} className="loss small">
          {props.error}
        </span>
      )}
    </div>
  )
}

interface CellProps {
  place: Place
  label: string
  way: string
}

/** The way's name. */
export function NameCell(props: CellProps) {
  const edit = useEdit()
  const value = String(valueAt(edit.document, props.place) ?? '')
  const missing = value.trim() === '' ? words().quickSheet.ways.nameNeeded : null
  return (
    <Cell
      {...props}
      className="cell name"
      shown={value}
      error={missing ?? problemAt(edit.problems, props.place)}
      onText={(text) => edit.set(props.place, text, placeKey(props.place))}
      onLeave={edit.pause}
    />
  )
}

/** A number; what can not be read stays as it was typed, and is answered beside it. */
export function NumberCell(props: CellProps & { rules: NumberRules }) {
  const { place, rules } = props
  const edit = useEdit()
  const typed = edit.texts[placeKey(place)]
  const read = typed === undefined ? null : readNumber(typed, rules)
  return (
    <Cell
      {...props}
      numeric
      shown={typed ?? writeNumber(valueAt(edit.document, place), rules)}
      error={read && 'error' in read ? read.error : problemAt(edit.problems, place)}
      onText={(text) => {
        const next = readNumber(text, rules)
        edit.setText(place, text, 'error' in next ? next.error : null)
        if ('value' in next) edit.set(place, next.value, placeKey(place))
      }}
      onLeave={() => {
        if (read && 'value' in read) edit.setText(place, null, null)
        edit.pause()
      }}
    />
  )
}

/** A leg's time: one number, or three. What a round of guesses brought loses its mark when something else is typed. */
export function TimeCell(props: CellProps) {
  const edit = useEdit()
  const leg = valueAt(edit.document, props.place) as QuickLeg
  const place = [...props.place, 'time']
  const typed = edit.texts[placeKey(place)]
  const read = typed === undefined ? null : readTime(typed)
  return (
    <Cell
      {...props}
      place={place}
      className="cell time"
      shown={typed ?? writeTime(leg.time)}
      error={read && 'error' in read ? read.error : problemAt(edit.problems, place)}
      hint={leg.belief && <span className="soft small">{words().quickSheet.ways.asked}</span>}
      onText={(text) => {
        const next = readTime(text)
        edit.setText(place, text, 'error' in next ? next.error : null)
        if ('time' in next && writeTime(next.time) !== writeTime(leg.time))
          edit.set(props.place, { ...leg, time: next.time, belief: null }, placeKey(place))
      }}
      onLeave={() => {
        if (read && 'time' in read) edit.setText(place, null, null)
        edit.pause()
      }}
    />
  )
}

/** Places of the game, one or several, behind what is chosen. */
export function PlacesCell(
  props: CellProps & {
    choices: { id: string; name: string; worth: string }[]
    /** What else is said of the choice while it is folded up. */
    note?: string | null
    children?: ReactNode
  },
) {
  const { place, choices } = props
  const edit = useEdit()
  const chosen = valueAt(edit.document, place) as string[]
  const texts = words().quickSheet.ways
  const names = choices.filter(({ id }) => chosen.includes(id)).map(({ name }) => name)
  const problem = edit.problems.find(({ path }) => placeKey(path.slice(0, place.length)) === placeKey(place))
  return (
    <div className="cell places">
      <span className="cell-label" aria-hidden="true">
        {props.label}
      </span>
      <details>
        <summary>
          <span className="visually-hidden">{texts.of(props.label, props.way)}: </span>
          {names.length > 0 ? names.join(', ') : texts.nothing}
          {props.note && <span className="soft small">, {props.note}</span>}
        </summary>
        <fieldset>
          <legend className="visually-hidden">{texts.of(props.label, props.way)}</legend>
          {choices.map(({ id, name, worth }) => (
            <label key={id} className="choice">
              <input
                type="checkbox"
                checked={chosen.includes(id)}
                disabled={edit.readOnly}
                onChange={(event) =>
                  edit.set(
                    place,
                    choices
                      .filter((choice) => (choice.id === id ? event.currentTarget.checked : chosen.includes(choice.id)))
                      .map((choice) => choice.id),
                  )
                }
              />
              <span>
                {name} {worth && <span className="soft small">{worth}</span>}
              </span>
            </label>
          ))}
          {props.children}
        </fieldset>
      </details>
      {problem && <span className="loss small">{problemWords(problem)}</span>}
    </div>
  )
}

/** One finish of the game, or none. */
export function FinishCell(props: CellProps & { choices: { id: string; name: string; worth: string }[] }) {
  const id = useId()
  const edit = useEdit()
  const value = valueAt(edit.document, props.place) as string | null
  const texts = words().quickSheet.ways
  const problem = problemAt(edit.problems, props.place)
  const chosen = props.choices.find((choice) => choice.id === value)
  return (
    <div className="cell" data-shown={chosen?.name ?? texts.noFinish}>
      <label htmlFor={id}>
        <span className="cell-label">{props.label}</span>
        <span className="visually-hidden">{texts.of('', props.way)}</span>
      </label>
      <select
        id={id}
        value={value ?? ''}
        disabled={edit.readOnly}
        onChange={(event) => edit.set(props.place, event.currentTarget.value === '' ? null : event.currentTarget.value)}
      >
        <option value="">{texts.noFinish}</option>
        {props.choices.map((choice) => (
          <option key={choice.id} value={choice.id}>
            {choice.name} ({choice.worth})
          </option>
        ))}
      </select>
      {problem && <span className="loss small">{problem}</span>}
    </div>
  )
}
