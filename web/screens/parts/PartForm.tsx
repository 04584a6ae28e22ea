import { TextInput } from '@mantine/core'
import type { Part } from '../../../src/model/timing/parts.ts'
import { placeKey, problemAt, useEdit } from '../../shell/fields/EditContext.tsx'
import { NumberField } from '../../shell/fields/NumberField.tsx'
import { shownNumber } from '../../shell/fields/parse.ts'
import { TextField } from '../../shell/fields/TextField.tsx'
import { pressure } from '../../units/measures.ts'
import { useUnits } from '../../units/system.ts'
import { words } from '../../words/catalogue.ts'
import { Present } from '../games/forms/Choices.tsx'
import { FlowFields } from './FlowFields.tsx'
import { atmosphereWords, gaugeWords } from './gauge.ts'
import { numbersOf, type PartNumber } from './numbers.ts'

/** All that is known of a part; every number in the reader's units, kept in SI. */
export function PartForm(props: { part: Part }) {
  const { part } = props
  const texts = words().parts
  const numbers = numbersOf[part.kind]
  return (
    <>
      <section className="sheet stack">
        <div className="form-grid">
          <TextField place={['part', 'name']} label={texts.name} required />
          <DayField />
        </div>
        <TextField place={['part', 'source']} label={texts.source} help={texts.sourceHelp} lines={2} />
      </section>
      <section className="sheet stack" aria-labelledby="part-numbers">
        <h2 id="part-numbers">{texts.form.numbers}</h2>
        {numbers.length > 0 && (
          <div className="form-grid">
            {numbers
              .filter(({ key, optional }) => !optional || key in part)
              .map((number) => (
                <PartNumberField key={number.key} part={part} number={number} />
              ))}
          </div>
        )}
        {part.kind === 'motor' && (
          <Present
            place={['part', 'rotorInertia']}
            label={texts.form.knownInertia}
            fresh={0.00002}
            absent={undefined}
          />
        )}
        {part.kind === 'compressor' && <FlowFields flow={part.flow} />}
        {part.kind === 'tank' && <p className="soft small">{texts.list.absolute(atmosphereWords())}</p>}
      </section>
    </>
  )
}

/** A tenth of the number's own size, so that an arrow key neither does nothing nor jumps. */
const stepOf = (shown: number): number => 10 ** (Math.floor(Math.log10(Math.abs(shown) || 1)) - 1)

function PartNumberField(props: { part: Part; number: PartNumber }) {
  const { key, quantity, min, above, max } = props.number
  const texts = words().parts
  const system = useUnits()
  const value = (props.part as unknown as { [key: string]: number })[key] ?? 0
  const rules = {
    max,
    ...(quantity && { quantity }),
    ...(min !== undefined && { min }),
    ...(above !== undefined && { above }),
  }
  const help = texts.helps[key as keyof typeof texts.helps]
  return (
    <NumberField
      place={['part', key]}
      label={texts.labels[key as keyof typeof texts.labels]}
      help={quantity === pressure ? `${help} ${gaugeWords(value)}` : help}
      step={stepOf(shownNumber(value, rules, system))}
      {...rules}
    />
  )
}

function DayField() {
  const edit = useEdit()
  const texts = words().parts
  const place = ['part', 'date']
  const { part } = edit.document as { part: Part }
  return (
    <TextInput
      type="date"
      label={texts.date}
      description={texts.dateHelp}
      value={part.date}
      readOnly={edit.readOnly}
      data-place={placeKey(place)}
      error={problemAt(edit.problems, place)}
      onChange={(event) => edit.set(place, event.currentTarget.value, placeKey(place))}
      onBlur={edit.pause}
    />
  )
}
