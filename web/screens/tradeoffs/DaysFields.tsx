import { TextInput } from '@mantine/core'
import type { Input } from '../../../src/model/compare/types.ts'
import { placeKey, problemAt, useEdit } from '../../shell/fields/EditContext.tsx'
import { readNumber } from '../../shell/fields/parse.ts'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'
import type { Practice } from '../../words/practice.ts'

type End = 'low' | 'likely' | 'high'

/** What is believed of an unknown that is told in days: shown and typed in days, kept as the factor that it is. */
export function DaysFields(props: { input: Input; index: number; practice: Practice }) {
  const { input, index, practice } = props
  const edit = useEdit()
  const text = words().practice
  // Fewer days less is a larger success.
  const fewest: End = practice.falls ? 'high' : 'low'
  const most: End = practice.falls ? 'low' : 'high'
  const days = (end: End) => practice.days(input[end])
  const fields = [
    { end: fewest, label: text.low, min: 0, max: days('likely') },
    { end: 'likely' as const, label: text.likely, min: days(fewest), max: days(most) },
    { end: most, label: text.high, min: days('likely'), max: practice.falls ? 1 / practice.perDay : undefined },
  ]
  return fields.map(({ end, label, ...limits }) => {
    const place = ['inputs', index, end] as const
    const key = placeKey([...place])
    const typed = edit.texts[key]
    const read = typed === undefined ? null : readNumber(typed, limits)
    return (
      <TextInput
        key={end}
        label={label}
        value={typed ?? plain(days(end), 3)}
        error={read && 'error' in read ? read.error : problemAt(edit.problems, [...place])}
        readOnly={edit.readOnly}
        inputMode="decimal"
        autoComplete="off"
        data-place={key}
        rightSection={<span className="soft">{text.unit}</span>}
        rightSectionWidth={52}
        rightSectionPointerEvents="none"
        onChange={(event) => {
          const next = readNumber(event.currentTarget.value, limits)
          edit.setText([...place], event.currentTarget.value, 'error' in next ? next.error : null)
          if ('value' in next) edit.set([...place], practice.value(next.value), key)
        }}
        onBlur={() => {
          if (read && 'value' in read) edit.setText([...place], null, null)
          edit.pause()
        }}
      />
    )
  })
}
