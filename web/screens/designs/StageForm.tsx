import { Button, Checkbox } from '@mantine/core'
import type { Stage } from '../../../src/model/documents/types.ts'
import type { Place } from '../../data/difference.ts'
import { DurationFields } from '../../shell/fields/DurationFields.tsx'
import { problemAt, useEdit } from '../../shell/fields/EditContext.tsx'
import { TextField } from '../../shell/fields/TextField.tsx'
import { words } from '../../words/catalogue.ts'
import { cutStage } from './split.ts'

/** One stage: its name, its time, and what it waits for. */
export function StageForm(props: { trip: Stage[]; selected: string | null; place: Place }) {
  const edit = useEdit()
  const index = props.trip.findIndex(({ id }) => id === props.selected)
  const stage = props.trip[index]
  if (!stage) return <p className="soft">Choose a bar to change its time, or what it waits for.</p>
  const place: Place = [...props.place, 'stages', index]
  const waitsFor = (id: string, waits: boolean) =>
    edit.set([...place, 'after'], waits ? [...stage.after, id] : stage.after.filter((other) => other !== id))
  const remove = () => {
    const others = props.trip
      .filter(({ id }) => id !== stage.id)
      .map((other) =>
        other.after.includes(stage.id)
          ? { ...other, after: [...new Set(other.after.flatMap((id) => (id === stage.id ? stage.after : [id])))] }
          : other,
      )
    edit.set([...props.place, 'stages'], others)
  }
  const cut = () => {
    const taken = props.trip.map(({ id }) => id)
    const number = [2, 3, 4, 5, 6, 7, 8, 9].find((each) => !taken.includes(`${stage.id}-${each}`)) ?? taken.length + 1
    const second = { id: `${stage.id}-${number}`, name: words().quickSheet.split.second(stage.name) }
    edit.set([...props.place, 'stages'], cutStage(props.trip, stage.id, second))
  }
  const problem = problemAt(edit.problems, [...place, 'after']) ?? problemAt(edit.problems, [...props.place, 'stages'])
  return (
    <div className="stack" data-testid="stage-form">
      <div className="form-grid">
        <TextField place={[...place, 'name']} label="Stage" required />
      </div>
      <DurationFields place={[...place, 'duration']} label="Time" />
      <fieldset>
        <legend>Waits for</legend>
        <div className="row">
          {[{ id: 'drive', name: 'Drive' }, ...props.trip.filter(({ id }) => id !== stage.id)].map(({ id, name }) => (
            <Checkbox
              key={id}
              label={name}
              disabled={edit.readOnly}
              checked={stage.after.includes(id)}
              onChange={(event) => waitsFor(id, event.currentTarget.checked)}
            />
          ))}
        </div>
        {problem && (
          <p role="alert" className="loss">
            {problem}
          </p>
        )}
      </fieldset>
      <div className="row">
        <Checkbox
          label="once per piece of the load"
          disabled={edit.readOnly}
          checked={stage.each ?? false}
          onChange={(event) => edit.set([...place, 'each'], event.currentTarget.checked ? true : undefined)}
        />
        {!edit.readOnly && (
          <Button variant="default" size="compact-md" onClick={cut}>
            {words().quickSheet.split.cut}
          </Button>
        )}
        {!edit.readOnly && (
          <Button variant="subtle" size="compact-md" onClick={remove}>
            Remove this stage
          </Button>
        )}
      </div>
    </div>
  )
}
