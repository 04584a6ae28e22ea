import { Checkbox } from '@mantine/core'
import type { Place } from '../../../data/difference.ts'
import { valueAt } from '../../../data/place.ts'
import { forgetTexts, placeKey, problemAt, useEdit } from '../../../shell/fields/EditContext.tsx'
import { words } from '../../../words/catalogue.ts'
import { problemsInWords } from '../../../words/problems.ts'

/** Which of the named things: a list of ids, kept in the things' own order. At least one is needed. */
export function Choices(props: { place: Place; label: string; of: readonly { id: string; name: string }[] }) {
  const { place, of } = props
  const edit = useEdit()
  const chosen = (valueAt(edit.document, place) ?? []) as string[]
  const known = new Set(of.map(({ id }) => id))
  const lost = chosen.filter((id) => !known.has(id))
  const said =
    problemAt(edit.problems, place) ??
    problemsInWords(edit.problems).find(({ path }) => placeKey(path).startsWith(`${placeKey(place)}/`))?.message
  const error = chosen.length === 0 ? words().games.members.chooseOne : said
  return (
    <fieldset>
      <legend>{props.label}</legend>
      <div className="row">
        {[...of, ...lost.map((id) => ({ id, name: id }))].map(({ id, name }) => (
          <Checkbox
            key={id}
            label={name}
            disabled={edit.readOnly}
            checked={chosen.includes(id)}
            onChange={(event) => {
              const next = event.currentTarget.checked ? [...chosen, id] : chosen.filter((other) => other !== id)
              const order = of.map((one) => one.id)
              edit.set(
                place,
                next.toSorted((a, b) => order.indexOf(a) - order.indexOf(b)),
              )
            }}
          />
        ))}
      </div>
      {error && <p className="loss small">{error}</p>}
    </fieldset>
  )
}

/** Whether a part of the document is there at all: null (or missing) where it is not. */
export function Present(props: { place: Place; label: string; fresh: unknown; absent?: null | undefined }) {
  const edit = useEdit()
  const value = valueAt(edit.document, props.place)
  const absent = 'absent' in props ? props.absent : null
  return (
    <Checkbox
      label={props.label}
      disabled={edit.readOnly}
      checked={value !== null && value !== undefined}
      onChange={(event) => {
        forgetTexts(edit, props.place)
        edit.setText(props.place, null, null)
        edit.set(props.place, event.currentTarget.checked ? props.fresh : absent)
      }}
    />
  )
}

/** Yes or no. */
export function YesNo(props: { place: Place; label: string }) {
  const edit = useEdit()
  return (
    <Checkbox
      label={props.label}
      disabled={edit.readOnly}
      checked={valueAt(edit.document, props.place) === true}
      onChange={(event) => edit.set(props.place, event.currentTarget.checked)}
    />
  )
}
