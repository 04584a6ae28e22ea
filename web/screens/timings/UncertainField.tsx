import { NativeSelect } from '@mantine/core'
import type { Uncertain } from '../../../src/model/timing/index.ts'
import type { Place } from '../../data/difference.ts'
import { valueAt } from '../../data/place.ts'
import { forgetTexts, problemAt, useEdit } from '../../shell/fields/EditContext.tsx'
import { NumberField } from '../../shell/fields/NumberField.tsx'
import { shownNumber } from '../../shell/fields/parse.ts'
import { useUnits } from '../../units/system.ts'
import { words } from '../../words/catalogue.ts'
import { type Certainty, certaintyOf, likelyOf, withCertainty } from './certainty.ts'
import type { InputNumber } from './inputs.ts'

/** A tenth of the number's own size, so that an arrow key neither does nothing nor jumps. */
const stepOf = (shown: number): number => 10 ** (Math.floor(Math.log10(Math.abs(shown) || 1)) - 1)

/** A number of a mechanism, known or with its spread: how well it is known stands beneath it. */
export function UncertainField(props: { place: Place; number: InputNumber; label: string; help?: string | undefined }) {
  const { place, number, label, help } = props
  const edit = useEdit()
  const system = useUnits()
  const texts = words().timingInputs
  const value = valueAt(edit.document, place) as Uncertain | null | undefined
  if (value === null || value === undefined) return null
  const { key: _, uncertain, fresh: __, ...limits } = number
  const likely = likelyOf(value)
  const rules = { ...limits, step: number.whole ? 1 : stepOf(shownNumber(likely, limits, system)) }
  const part = (key: string, name: string) => <NumberField key={key} place={[...place, key]} label={name} {...rules} />
  const said = certaintyOf(value)
  const take = (next: Certainty) => {
    edit.setText(place, null, null)
    forgetTexts(edit, place)
    edit.set(place, withCertainty(value, next, number))
  }
  const kinds: Certainty[] = ['known', 'tripsRange', 'levelRange']
  // A log-normal has no value at or below 0.
  if (likely > 0 || said.endsWith('Lognormal')) kinds.push('tripsLognormal', 'levelLognormal')
  return (
    <div
      className={typeof value === 'number' ? 'uncertain' : 'uncertain spread-open'}
      {...(typeof value !== 'number' && { role: 'group', 'aria-label': label })}
    >
      {typeof value === 'number' && <NumberField place={place} label={label} {...(help && { help })} {...rules} />}
      {typeof value !== 'number' && (
        <div className="form-grid">
          {value.kind === 'range'
            ? [part('low', texts.low(label)), part('likely', texts.likely(label)), part('high', texts.high(label))]
            : [part('median', texts.median(label)), <SpreadOf key="spread" place={place} label={label} />]}
        </div>
      )}
      {uncertain && (
        <NativeSelect
          size="xs"
          className="certainty"
          aria-label={texts.certainty(label)}
          disabled={edit.readOnly}
          value={said}
          error={problemAt(edit.problems, place)}
          data={kinds.map((kind) => ({ value: kind, label: texts[kind] }))}
          onChange={(event) => take(event.currentTarget.value as Certainty)}
        />
      )}
    </div>
  )
}

/** The factor within which 2 of 3 values of a log-normal lie. */
function SpreadOf(props: { place: Place; label: string }) {
  const { place, label } = props
  return (
    <NumberField
      place={[...place, 'spread']}
      label={words().timingInputs.spread(label)}
      min={1}
      max={4}
      step={0.01}
      unit="×"
    />
  )
}
