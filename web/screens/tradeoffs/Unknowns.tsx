import { Button, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import type { Input } from '../../../src/model/compare/types.ts'
import type { ComparisonRecord } from '../../../src/model/documents/records.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { NumberField } from '../../shell/fields/NumberField.tsx'
import { TextField } from '../../shell/fields/TextField.tsx'
import { inputWords } from '../../words/inputs.ts'
import { candidates } from './candidates.ts'

/** The unknown numbers of the comparison: what is believed about each, to be changed here. */
export function Unknowns(props: { record: ComparisonRecord; documents: { game: Game; options: Option[] } }) {
  const { record, documents } = props
  const edit = useEdit()
  const remove = (index: number) => {
    const inputs = record.inputs.filter((_, other) => other !== index)
    const breakEven = inputs.some(({ id }) => id === record.breakEven) ? record.breakEven : (inputs[0]?.id ?? null)
    edit.set([], { ...record, inputs, breakEven })
  }
  return (
    <section className="sheet stack" aria-labelledby="unknowns-title">
      <h2 id="unknowns-title">The unknowns</h2>
      <p>
        What you believe about each: its low, likely and high value. Low and high are what you would be surprised to see
        passed.
      </p>
      <div className="form-grid">
        <TextField place={['name']} label="Name of the comparison" required />
        <div style={{ gridColumn: 'span 2' }}>
          <TextField place={['question']} label="Question" />
        </div>
      </div>
      {record.inputs.map((input, index) => (
        <Unknown
          key={input.id}
          input={input}
          index={index}
          documents={documents}
          onRemove={edit.readOnly ? null : () => remove(index)}
        />
      ))}
      {!edit.readOnly && <AddUnknown record={record} documents={documents} />}
    </section>
  )
}

function Unknown(props: {
  input: Input
  index: number
  documents: { game: Game; options: Option[] }
  onRemove: (() => void) | null
}) {
  const { input, index } = props
  const words = inputWords(input, props.documents)
  const percent = words.measure === 'probability'
  const unit = words.measure === 'seconds' ? 's' : words.measure === 'factor' ? '×' : undefined
  const shared = { percent, unit, step: percent ? 1 : 0.05, ...(percent ? { min: 0, max: 1 } : {}) }
  return (
    <fieldset className="unknown">
      <legend>
        {words.name} <span className="soft small">– {words.about}</span>
      </legend>
      <div className="form-grid">
        <NumberField place={['inputs', index, 'low']} label="Low" {...shared} max={input.likely} />
        <NumberField place={['inputs', index, 'likely']} label="Likely" {...shared} min={input.low} max={input.high} />
        <NumberField place={['inputs', index, 'high']} label="High" {...shared} min={input.likely} />
        {input.perMeasurement !== undefined && (
          <NumberField
            place={['inputs', index, 'perMeasurement']}
            label="Spread of one measurement"
            unit={percent ? undefined : unit}
            above={0}
            step={0.05}
          />
        )}
        {props.onRemove && (
          <div style={{ alignSelf: 'end' }}>
            <Button variant="subtle" size="compact-md" onClick={props.onRemove} aria-label={`Remove ‘${words.name}’`}>
              Remove
            </Button>
          </div>
        )}
      </div>
    </fieldset>
  )
}

function AddUnknown(props: { record: ComparisonRecord; documents: { game: Game; options: Option[] } }) {
  const { record, documents } = props
  const edit = useEdit()
  const free = candidates(documents).filter(
    ({ paths }) => !record.inputs.some((input) => input.paths.includes(paths[0]!)),
  )
  const [chosen, setChosen] = useState('')
  if (free.length === 0) return null
  const add = () => {
    const input = free.find(({ paths }) => paths[0] === chosen) ?? free[0]!
    edit.set([], { ...record, inputs: [...record.inputs, input], breakEven: record.breakEven ?? input.id })
    setChosen('')
  }
  return (
    <div className="row" style={{ alignItems: 'end' }}>
      <NativeSelect
        label="Another unknown"
        value={chosen || free[0]!.paths[0]!}
        data={free.map((input) => ({ value: input.paths[0]!, label: inputWords(input, documents).about }))}
        onChange={(event) => setChosen(event.currentTarget.value)}
      />
      <Button variant="default" onClick={add}>
        Add it
      </Button>
    </div>
  )
}
