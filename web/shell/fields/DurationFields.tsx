import { NativeSelect, Textarea } from '@mantine/core'
import type { Duration } from '../../../src/model/documents/types.ts'
import { mean } from '../../../src/model/duration/index.ts'
import type { Place } from '../../data/difference.ts'
import { valueAt } from '../../data/place.ts'
import { asKind } from '../../screens/designs/durations.ts'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'
import { noteEdit } from '../../worker/latency.ts'
import { placeKey, problemAt, useEdit } from './EditContext.tsx'
import { NumberField } from './NumberField.tsx'
import { readTimes, writeNumber } from './parse.ts'

const kinds = ['fixed', 'range', 'lognormal', 'samples'] as const satisfies Duration['kind'][]

/** A Duration: how it is said, and its numbers. `factor`: a factor instead of seconds (pace). */
export function DurationFields(props: { place: Place; label: string; factor?: boolean }) {
  const { place, label, factor } = props
  const edit = useEdit()
  const texts = words().durations
  const duration = valueAt(edit.document, place) as Duration | null | undefined
  if (!duration) return null
  const unit = factor ? '×' : 's'
  // A time from hardware has as many digits as the machine; nobody measures further ones.
  const rules = { min: factor ? 1 : 0, max: 600, unit, step: factor ? 0.01 : 0.1, digits: 4 }
  const average = safeMean(duration)
  return (
    <fieldset>
      <legend>
        {label}
        {average !== null && (
          <span className="soft small"> – {texts.average(`${plain(average, 2)}\u00a0${unit}`)}</span>
        )}
      </legend>
      <div className="form-grid">
        <NativeSelect
          label={texts.kind}
          disabled={edit.readOnly}
          value={duration.kind}
          data={kinds.map((kind) => ({ value: kind, label: texts.kinds[kind] }))}
          error={problemAt(edit.problems, place)}
          onChange={(event) => edit.set(place, asKind(duration, event.currentTarget.value as Duration['kind']))}
        />
        {duration.kind === 'fixed' && <NumberField place={[...place, 'seconds']} label={texts.time} {...rules} />}
        {duration.kind === 'range' && (
          <>
            <NumberField place={[...place, 'low']} label={texts.low} {...rules} />
            <NumberField place={[...place, 'likely']} label={texts.likely} {...rules} />
            <NumberField place={[...place, 'high']} label={texts.high} {...rules} />
          </>
        )}
        {duration.kind === 'lognormal' && (
          <>
            <NumberField place={[...place, 'median']} label={texts.median} {...rules} />
            <NumberField
              place={[...place, 'spread']}
              label={texts.spread}
              min={1}
              max={10}
              step={0.01}
              unit="×"
              digits={4}
              help={texts.spreadHelp}
            />
          </>
        )}
        {duration.kind === 'samples' && <TimesField place={[...place, 'seconds']} />}
      </div>
    </fieldset>
  )
}

function safeMean(duration: Duration): number | null {
  try {
    const found = mean(duration)
    return Number.isFinite(found) ? found : null
  } catch {
    return null
  }
}

function TimesField(props: { place: Place }) {
  const edit = useEdit()
  const values = valueAt(edit.document, props.place) as number[]
  const key = placeKey(props.place)
  const typed = edit.texts[key]
  const read = typed === undefined ? null : readTimes(typed)
  return (
    <Textarea
      label={words().durations.times}
      description={words().durations.timesHelp}
      rows={3}
      readOnly={edit.readOnly}
      value={typed ?? values.map((value) => writeNumber(value)).join(' ')}
      error={read && 'error' in read ? read.error : problemAt(edit.problems, props.place)}
      onChange={(event) => {
        noteEdit()
        const text = event.currentTarget.value
        const next = readTimes(text)
        edit.setText(props.place, text, 'error' in next ? next.error : null)
        if ('values' in next) edit.set(props.place, next.values, key)
      }}
      onBlur={() => {
        if (read && 'values' in read) edit.setText(props.place, null, null)
        edit.pause()
      }}
    />
  )
}
