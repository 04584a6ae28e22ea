import { Textarea, TextInput } from '@mantine/core'
import type { Place } from '../../data/difference.ts'
import { valueAt } from '../../data/place.ts'
import { words } from '../../words/catalogue.ts'
import { placeKey, problemAt, useEdit } from './EditContext.tsx'

/** A text of the document. */
export function TextField(props: { place: Place; label: string; required?: boolean; lines?: number; help?: string }) {
  const edit = useEdit()
  const value = String(valueAt(edit.document, props.place) ?? '')
  const missing = props.required && value.trim() === '' ? words().shell.nameMissing : null
  const shared = {
    label: props.label,
    description: props.help,
    value,
    error: missing ?? problemAt(edit.problems, props.place),
    readOnly: edit.readOnly,
    lang: edit.language?.(value),
    'data-place': placeKey(props.place),
    onBlur: edit.pause,
  }
  const take = (text: string) => edit.set(props.place, text, placeKey(props.place))
  return props.lines ? (
    <Textarea {...shared} rows={props.lines} onChange={(event) => take(event.currentTarget.value)} />
  ) : (
    <TextInput {...shared} onChange={(event) => take(event.currentTarget.value)} />
  )
}
