import { Button } from '@mantine/core'
import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { SelectField } from '../../shell/fields/SelectField.tsx'
import { TextField } from '../../shell/fields/TextField.tsx'

type Listed = 'assumptions' | 'wouldChange' | 'measureNext' | 'objections' | 'agreed'

const today = () => new Date().toISOString().slice(0, 10)

/** What people write on the record; what was computed stays as it is. */
export function DecisionForm(props: { decision: DecisionRecord }) {
  const { decision } = props
  return (
    <section className="sheet stack" aria-label="Write on the record">
      <TextField place={['name']} label="Decision" required />
      <TextField place={['question']} label="Question" required />
      <div className="form-grid">
        <SelectField
          place={['chosen']}
          label="Chosen"
          choices={decision.snapshot.options.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <TextField place={['decidedOn']} label="Decided on (year-month-day)" />
      </div>
      <TextField place={['result']} label="Result" lines={3} />
      <Rows
        list="assumptions"
        title="Assumptions"
        rows={decision.assumptions}
        fresh={{ text: '', source: '' }}
        fields={[
          { key: 'text', label: 'Assumption' },
          { key: 'source', label: 'Where it comes from' },
        ]}
      />
      <Rows list="wouldChange" title="What would change it" rows={decision.wouldChange} fresh="" />
      <Rows list="measureNext" title="What to measure next" rows={decision.measureNext} fresh="" />
      <Rows
        list="objections"
        title="Objections"
        rows={decision.objections}
        fresh={{ text: '', answer: '' }}
        fields={[
          { key: 'text', label: 'Objection' },
          { key: 'answer', label: 'Answer' },
        ]}
      />
      <TextField place={['checkAtEvent']} label="How it will be checked at the event" lines={2} />
      <Rows
        list="agreed"
        title="Agreed"
        rows={decision.agreed}
        fresh={{ who: '', on: today() }}
        fields={[
          { key: 'who', label: 'Who' },
          { key: 'on', label: 'On (year-month-day)' },
        ]}
      />
    </section>
  )
}

function Rows(props: {
  list: Listed
  title: string
  rows: readonly unknown[]
  fresh: unknown
  fields?: { key: string; label: string }[]
}) {
  const { list, title, rows, fields } = props
  const edit = useEdit()
  return (
    <fieldset className="stack">
      <legend>{title}</legend>
      {rows.map((_, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a line has nothing of its own but its place
        <div key={index} className="row" style={{ alignItems: 'end' }}>
          {fields ? (
            fields.map(({ key, label }) => (
              <div key={key} style={{ flex: '1 1 14rem' }}>
                <TextField place={[list, index, key]} label={label} />
              </div>
            ))
          ) : (
            <div style={{ flex: '1 1 20rem' }}>
              <TextField place={[list, index]} label={`${title}, ${index + 1}`} />
            </div>
          )}
          <Button
            variant="subtle"
            size="compact-md"
            aria-label={`Remove line ${index + 1} of ${title}`}
            onClick={() =>
              edit.set(
                [list],
                rows.filter((__, other) => other !== index),
              )
            }
          >
            Remove
          </Button>
        </div>
      ))}
      <div>
        <Button variant="default" size="compact-md" onClick={() => edit.set([list], [...rows, props.fresh])}>
          Add a line
        </Button>
      </div>
    </fieldset>
  )
}
