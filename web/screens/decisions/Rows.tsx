import { Button } from '@mantine/core'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { TextField } from '../../shell/fields/TextField.tsx'
import { words } from '../../words/catalogue.ts'

/** Lines of the record: single sentences, or several fields to a line. */
export function Rows(props: {
  list: string
  title: string
  rows: readonly unknown[]
  fresh: unknown
  fields?: { key: string; label: string; long?: boolean }[]
}) {
  const { list, title, rows, fields } = props
  const edit = useEdit()
  const texts = words().decisions.form
  return (
    <fieldset className="stack">
      <legend>{title}</legend>
      {rows.map((_, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a line has nothing of its own but its place
        <div key={index} className="row" style={{ alignItems: 'end' }}>
          {fields ? (
            fields.map(({ key, label, long }) => (
              <div key={key} style={{ flex: '1 1 14rem' }}>
                <TextField place={[list, index, key]} label={label} lines={long ? 2 : undefined} />
              </div>
            ))
          ) : (
            <div style={{ flex: '1 1 20rem' }}>
              <TextField place={[list, index]} label={texts.line(title, index + 1)} lines={2} />
            </div>
          )}
          <Button
            variant="subtle"
            size="compact-md"
            aria-label={texts.removeLine(index + 1, title)}
            onClick={() =>
              edit.set(
                [list],
                rows.filter((__, other) => other !== index),
              )
            }
          >
            {texts.remove}
          </Button>
        </div>
      ))}
      <div>
        <Button
          variant="default"
          size="compact-md"
          aria-label={texts.addTo(title)}
          onClick={() => edit.set([list], [...rows, props.fresh])}
        >
          {texts.add}
        </Button>
      </div>
    </fieldset>
  )
}
