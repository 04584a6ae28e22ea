import { TextInput } from '@mantine/core'
import type { Place } from '../../data/difference.ts'
import { valueAt } from '../../data/place.ts'
import { noteEdit } from '../../worker/latency.ts'
import { placeKey, problemAt, useEdit } from './EditContext.tsx'
import { type NumberRules, readNumber, writeNumber } from './parse.ts'

export interface NumberFieldProps extends NumberRules {
  place: Place
  label: string
  unit?: string
  /** What one press of an arrow key adds, in the field's unit as shown. */
  step?: number
  help?: string
}

/** A number of the document. What is typed stays as typed; what can not be read is said beside it. */
export function NumberField(props: NumberFieldProps) {
  const { place, label, unit, step = 0.1, help, ...rules } = props
  const edit = useEdit()
  const key = placeKey(place)
  const value = valueAt(edit.document, place)
  const typed = edit.texts[key]
  const read = typed === undefined ? null : readNumber(typed, rules)
  const error = read && 'error' in read ? read.error : problemAt(edit.problems, place)
  const take = (text: string) => {
    noteEdit()
    const next = readNumber(text, rules)
    edit.setText(place, text, 'error' in next ? next.error : null)
    if ('value' in next && next.value !== value) edit.set(place, next.value, key)
  }
  return (
    <TextInput
      label={label}
      description={help}
      value={typed ?? writeNumber(value, rules)}
      error={error}
      readOnly={edit.readOnly}
      inputMode="decimal"
      autoComplete="off"
      data-place={key}
      rightSection={unit || rules.percent ? <span className="soft">{rules.percent ? '%' : unit}</span> : undefined}
      rightSectionWidth={unit && unit.length > 2 ? 52 : 36}
      rightSectionPointerEvents="none"
      onChange={(event) => take(event.currentTarget.value)}
      onBlur={() => {
        if (read && 'value' in read) edit.setText(place, null, null)
        edit.pause()
      }}
      onKeyDown={(event) => {
        const sign = { ArrowUp: 1, ArrowDown: -1 }[event.key]
        if (sign === undefined || edit.readOnly) return
        event.preventDefault()
        const shown = Number(writeNumber(value, rules) || 0) + sign * step * (event.shiftKey ? 5 : 1)
        take(String(Number(shown.toFixed(6))))
      }}
    />
  )
}
