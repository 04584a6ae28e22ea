import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { SelectField } from '../../shell/fields/SelectField.tsx'
import { TextField } from '../../shell/fields/TextField.tsx'
import { words } from '../../words/catalogue.ts'
import { Rows } from './Rows.tsx'

const today = () => new Date().toISOString().slice(0, 10)

/** What people write on the record; what was computed stays as it is. */
export function DecisionForm(props: { decision: DecisionRecord }) {
  const { decision } = props
  const texts = words().decisions
  const { form } = texts
  return (
    <section className="sheet stack" aria-label={form.label}>
      <h1 className="visually-hidden">{decision.name}</h1>
      <TextField place={['name']} label={form.name} required />
      <TextField place={['question']} label={form.question} required />
      <div className="form-grid">
        <SelectField
          place={['chosen']}
          label={form.chosen}
          choices={decision.snapshot.options.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <TextField place={['decidedOn']} label={form.decidedOn} />
      </div>
      <TextField place={['result']} label={texts.result} lines={3} />
      <Rows
        list="assumptions"
        title={texts.assumptions}
        rows={decision.assumptions}
        fresh={{ text: '', source: '' }}
        fields={[
          { key: 'text', label: form.assumption, long: true },
          { key: 'source', label: form.source, long: true },
        ]}
      />
      <Rows list="wouldChange" title={texts.wouldChange} rows={decision.wouldChange} fresh="" />
      <Rows list="measureNext" title={texts.measureNext} rows={decision.measureNext} fresh="" />
      <Rows
        list="objections"
        title={texts.objections}
        rows={decision.objections}
        fresh={{ who: '', text: '', answer: '' }}
        fields={[
          { key: 'who', label: form.who },
          { key: 'text', label: form.objection, long: true },
          { key: 'answer', label: form.answer, long: true },
        ]}
      />
      <Rows
        list="checks"
        title={texts.checks}
        rows={decision.checks ?? []}
        fresh={{ quantity: '', expected: '', when: '' }}
        fields={[
          { key: 'quantity', label: texts.quantity, long: true },
          { key: 'expected', label: texts.expected, long: true },
          { key: 'when', label: texts.when, long: true },
        ]}
      />
      <TextField place={['checkAtEvent']} label={form.checkAtEvent} lines={2} />
      <Rows
        list="agreed"
        title={texts.agreed}
        rows={decision.agreed}
        fresh={{ who: '', on: today() }}
        fields={[
          { key: 'who', label: form.who },
          { key: 'on', label: form.on },
        ]}
      />
    </section>
  )
}
