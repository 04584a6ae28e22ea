import { NativeSelect } from '@mantine/core'
import type { Place } from '../../data/difference.ts'
import { valueAt } from '../../data/place.ts'
import { problemAt, useEdit } from './EditContext.tsx'

const none = '\u0000'

/** A choice of the document; `null` values are a choice of their own. */
export function SelectField(props: {
  place: Place
  label: string
  choices: { value: string | null; label: string }[]
  help?: string
}) {
  const edit = useEdit()
  const value = valueAt(edit.document, props.place)
  return (
    <NativeSelect
      label={props.label}
      description={props.help}
      disabled={edit.readOnly}
      value={value === null || value === undefined ? none : String(value)}
      error={problemAt(edit.problems, props.place)}
      data={props.choices.map((choice) => ({ value: choice.value ?? none, label: choice.label }))}
      onChange={(event) => {
        const chosen = event.currentTarget.value
        edit.set(props.place, chosen === none ? null : chosen)
      }}
    />
  )
}
