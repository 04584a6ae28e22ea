import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { Input } from '../../../src/model/compare/types.ts'
import type { ComparisonRecord } from '../../../src/model/documents/records.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { forgetTexts, useEdit } from '../../shell/fields/EditContext.tsx'
import { NumberField } from '../../shell/fields/NumberField.tsx'
import { TextField } from '../../shell/fields/TextField.tsx'
import { words as texts } from '../../words/catalogue.ts'
import { inputWords } from '../../words/inputs.ts'
import { practiceOf } from '../../words/practice.ts'
import { DaysFields } from './DaysFields.tsx'
import { LessPractice } from './LessPractice.tsx'
import { UnknownName } from './UnknownName.tsx'
import { wordOf } from './unknownNames.ts'
import { useCandidates } from './useCandidates.ts'

/** The unknown numbers of the comparison: what is believed about each, to be changed here. */
export function Unknowns(props: { record: ComparisonRecord; documents: { game: Game; options: Option[] } }) {
  const { record, documents } = props
  const edit = useEdit()
  const text = texts().tradeoffs.unknowns
  const remove = (index: number) => {
    const inputs = record.inputs.filter((_, other) => other !== index)
    const breakEven = inputs.some(({ id }) => id === record.breakEven) ? record.breakEven : (inputs[0]?.id ?? null)
    forgetTexts(edit, ['inputs'])
    edit.set([], { ...record, inputs, breakEven })
  }
  return (
    <section className="sheet stack" aria-labelledby="unknowns-title">
      <h2 id="unknowns-title">{text.title}</h2>
      <p>{text.how}</p>
      {record.inputs.some(({ perMeasurement }) => perMeasurement !== undefined) && (
        <p className="soft small">{text.howOne}</p>
      )}
      <div className="form-grid no-print">
        <TextField place={['name']} label={text.name} required />
        <div className="span-two">
          <TextField place={['question']} label={text.question} />
        </div>
      </div>
      {record.inputs.length === 0 && <p className="soft">{text.none}</p>}
      {record.inputs.map((input, index) => (
        <Unknown
          key={keyOf(record.inputs, index)}
          input={input}
          record={record}
          index={index}
          documents={documents}
          onRemove={edit.readOnly ? null : () => remove(index)}
        />
      ))}
      {!edit.readOnly && <AddUnknown record={record} documents={documents} />}
      {!edit.readOnly && <LessPractice record={record} documents={documents} />}
    </section>
  )
}

function Unknown(props: {
  input: Input
  record: ComparisonRecord
  index: number
  documents: { game: Game; options: Option[] }
  onRemove: (() => void) | null
}) {
  const { input, index } = props
  const words = inputWords(input, props.documents)
  const text = texts().tradeoffs.unknowns
  const practice = practiceOf(input)
  const percent = words.measure === 'probability'
  const unit =
    words.measure === 'seconds'
      ? text.seconds
      : words.measure === 'factor'
        ? '×'
        : input.as === 'add'
          ? text.added
          : undefined
  const shared = { percent, unit, step: percent ? 1 : 0.05, ...(percent ? { min: 0, max: 1 } : {}) }
  return (
    <fieldset className="unknown">
      <legend>
        {words.name} {words.about !== words.name && <span className="soft small">– {words.about}</span>}
      </legend>
      <div className="form-grid">
        <UnknownName record={props.record} index={index} name={words.name} />
        {practice ? (
          <DaysFields input={input} index={index} practice={practice} />
        ) : (
          <>
            <NumberField place={['inputs', index, 'low']} label={text.low} {...shared} max={input.likely} />
            <NumberField
              place={['inputs', index, 'likely']}
              label={text.likely}
              {...shared}
              min={input.low}
              max={input.high}
            />
            <NumberField place={['inputs', index, 'high']} label={text.high} {...shared} min={input.likely} />
          </>
        )}
        {input.perMeasurement !== undefined && (
          <NumberField
            place={['inputs', index, 'perMeasurement']}
            label={text.one}
            percent={percent}
            unit={unit}
            above={0}
            step={percent ? 1 : 0.05}
          />
        )}
        {props.onRemove && (
          <div style={{ alignSelf: 'end' }}>
            <Button variant="subtle" size="compact-md" onClick={props.onRemove} aria-label={text.removeOf(words.name)}>
              {text.remove}
            </Button>
          </div>
        )}
      </div>
    </fieldset>
  )
}

/** What an unknown is told from the others by while its name changes: what it is about, and which of those alike. */
const keyOf = (inputs: readonly Input[], index: number): string => {
  const about = inputs[index]!.paths.join(' ')
  return `${about} ${inputs.slice(0, index).filter(({ paths }) => paths.join(' ') === about).length}`
}

function AddUnknown(props: { record: ComparisonRecord; documents: { game: Game; options: Option[] } }) {
  const { record, documents } = props
  const edit = useEdit()
  const free = useCandidates(documents).filter(
    ({ paths }) => !record.inputs.some((input) => input.paths.includes(paths[0]!)),
  )
  const [chosen, setChosen] = useState('')
  const [called, setCalled] = useState('')
  const text = texts().tradeoffs.unknowns
  if (free.length === 0) return null
  const name = wordOf(called)
  const taken = name !== '' && record.inputs.some(({ id }) => id === name)
  const add = () => {
    if (taken) return
    const found = free.find(({ paths }) => paths[0] === chosen) ?? free[0]!
    const input = name === '' ? found : { ...found, id: name }
    edit.set([], { ...record, inputs: [...record.inputs, input], breakEven: record.breakEven ?? input.id })
    setChosen('')
    setCalled('')
  }
  return (
    <div className="row no-print" style={{ alignItems: 'end' }}>
      <NativeSelect
        maw="100%"
        label={text.another}
        value={chosen || free[0]!.paths[0]!}
        data={free.map((input) => ({ value: input.paths[0]!, label: input.id }))}
        onChange={(event) => setChosen(event.currentTarget.value)}
      />
      <TextInput
        label={text.call}
        placeholder={text.callHelp}
        maxLength={60}
        value={called}
        error={taken ? text.taken(name) : null}
        onChange={(event) => setCalled(event.currentTarget.value)}
      />
      <Button variant="default" onClick={add}>
        {text.add}
      </Button>
    </div>
  )
}
