import { TextInput } from '@mantine/core'
import type { ComparisonRecord } from '../../../src/model/documents/records.ts'
import { placeKey, useEdit } from '../../shell/fields/EditContext.tsx'
import { words } from '../../words/catalogue.ts'
import { idOf, withUnknownNamed, wordOf } from './unknownNames.ts'

/** What an unknown is called. It is renamed as a whole, when the field is left, because its name is what the answer knows it by. */
export function UnknownName(props: { record: ComparisonRecord; index: number; name: string }) {
  const { record, index } = props
  const edit = useEdit()
  const text = words().tradeoffs.unknowns
  const place = ['inputs', index, 'id'] as const
  const typed = edit.texts[placeKey([...place])]
  const input = record.inputs[index]!

  const faultOf = (value: string): string | null => {
    const name = wordOf(value)
    if (name === '') return words().shell.nameMissing
    return record.inputs.some(({ id }, other) => other !== index && id === idOf(input, name)) ? text.taken(name) : null
  }
  const take = () => {
    if (typed === undefined || faultOf(typed)) return
    edit.setText([...place], null, null)
    const id = idOf(input, wordOf(typed))
    if (id !== input.id && wordOf(typed) !== props.name) edit.set([], withUnknownNamed(record, index, id))
  }
  return (
    <TextInput
      className="no-print"
      label={text.call}
      value={typed ?? props.name}
      error={typed === undefined ? null : faultOf(typed)}
      readOnly={edit.readOnly}
      maxLength={60}
      autoComplete="off"
      data-place={placeKey([...place])}
      onChange={({ currentTarget: { value } }) => edit.setText([...place], value, faultOf(value))}
      onBlur={take}
      onKeyDown={({ key }) => {
        if (key === 'Enter') take()
      }}
    />
  )
}
