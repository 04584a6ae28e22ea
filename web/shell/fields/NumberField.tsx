import { TextInput } from '@mantine/core'
import { useRef } from 'react'
import type { Place } from '../../data/difference.ts'
import { valueAt } from '../../data/place.ts'
import { unitOf } from '../../units/quantities.ts'
import { isBare } from '../../units/read.ts'
import { useUnits } from '../../units/system.ts'
import { typedNumber } from '../../words/format.ts'
import { noteEdit } from '../../worker/latency.ts'
import { pressed } from '../shortcuts.ts'
import { placeKey, problemAt, useEdit } from './EditContext.tsx'
import { type NumberRules, readNumber, shownNumber, stepShown, writeNumber } from './parse.ts'

export interface NumberFieldProps extends NumberRules {
  place: Place
  label: string
  /** Of a number that has no other unit elsewhere; a `quantity` brings its own. */
  unit?: string
  /** What one press of an arrow key adds, in the field's unit as shown (in SI where a quantity has a name). */
  step?: number
  help?: string
}

const steps = { numberUp: 1, numberDown: -1, numberFarUp: 5, numberFarDown: -5 } as const

/** A number of the document. What is typed stays as typed; what can not be read is said beside it. */
export function NumberField(props: NumberFieldProps) {
  const { place, label, step = 0.1, help, unit: given, ...rules } = props
  const edit = useEdit()
  const system = useUnits()
  const key = placeKey(place)
  const value = valueAt(edit.document, place)
  const typed = edit.texts[key]
  const unit = rules.quantity ? unitOf(rules.quantity, system).symbol : rules.percent ? '%' : given
  const read = typed === undefined ? null : readNumber(typed, rules, system)
  const error = read && 'error' in read ? read.error : problemAt(edit.problems, place)
  const found = useRef<{ text: string; value: unknown } | null>(null)
  const take = (text: string) => {
    noteEdit()
    const next = readNumber(text, rules, system)
    edit.setText(place, text, 'error' in next ? next.error : null)
    if ('error' in next) return
    // A shown number has fewer digits than the kept one: who types back what stood there means what was kept.
    const meant = found.current?.text === text ? found.current.value : next.value
    if (meant !== value) edit.set(place, meant, key)
  }
  return (
    <TextInput
      label={label}
      description={help}
      value={typed ?? writeNumber(value, rules, system)}
      error={error}
      readOnly={edit.readOnly}
      inputMode={rules.quantity ? 'text' : 'decimal'}
      autoComplete="off"
      data-place={key}
      rightSection={unit ? <span className="soft">{unit}</span> : undefined}
      rightSectionWidth={unit && unit.length > 2 ? Math.max(52, 12 + 8 * unit.length) : 36}
      rightSectionPointerEvents="none"
      onFocus={() => {
        found.current = typed === undefined ? { text: writeNumber(value, rules, system), value } : null
      }}
      onChange={(event) => take(event.currentTarget.value)}
      onBlur={() => {
        if (read && 'value' in read) edit.setText(place, null, null)
        // So that a number which could not be taken means the same after a switch of units.
        else if (read && rules.quantity && typed && isBare(typed)) edit.setText(place, `${typed} ${unit}`, read.error)
        edit.pause()
      }}
      onKeyDown={(event) => {
        const which = pressed(event, 'numberUp', 'numberDown', 'numberFarUp', 'numberFarDown')
        if (which === null || edit.readOnly) return
        event.preventDefault()
        const by = stepShown(step, rules, system) * steps[which]
        const shown = (typeof value === 'number' ? shownNumber(value, rules, system) : 0) + by
        take(typedNumber(String(Number(shown.toFixed(6)))))
      }}
    />
  )
}
