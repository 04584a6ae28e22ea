import { useId } from 'react'
import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import type { Place } from '../../data/difference.ts'
import { valueAt } from '../../data/place.ts'
import { problemAt, useEdit } from '../../shell/fields/EditContext.tsx'
import { SelectField } from '../../shell/fields/SelectField.tsx'
import { Fold } from '../../shell/parts/Fold.tsx'
import { words } from '../../words/catalogue.ts'
import { Present, YesNo } from '../games/forms/Choices.tsx'
import { type Field, formOf, type Group, kindOf } from './inputs.ts'
import { LegsField } from './LegsField.tsx'
import { PartField } from './PartField.tsx'
import { UncertainField } from './UncertainField.tsx'

interface Of {
  mechanism: Mechanism
  place: Place
  game: Game
  option: Option
}

/** Every number that a mechanism's calculator is given, in the reader's units. */
export function MechanismForm(props: Of) {
  return (
    <>
      {formOf[kindOf(props.mechanism)].map((group) => (
        <FormGroup key={group.name} {...props} group={group} />
      ))}
    </>
  )
}

function FormGroup(props: Of & { group: Group }) {
  const { group, mechanism } = props
  const id = useId()
  const title = words().timingInputs.groups[group.name]
  const fields = (
    <div className="form-grid timing-fields">
      {group.fields
        .filter((field) => isThere(field, mechanism))
        .map((field) => (
          <FormField key={field.kind === 'legs' ? 'legs' : `${field.kind} ${field.key}`} {...props} field={field} />
        ))}
    </div>
  )
  if (!group.folded)
    return (
      <section aria-labelledby={id}>
        <h5 id={id}>{title}</h5>
        {fields}
      </section>
    )
  return (
    <section aria-labelledby={id}>
      <Fold id={id} title={title} level={5}>
        {fields}
      </Fold>
    </section>
  )
}

/** What belongs to a part of the input that is missing is not asked for. */
function isThere(field: Field, { input }: Mechanism): boolean {
  if (field.kind === 'legs' || !field.key.includes('.')) return true
  const whole = valueAt(input, [field.key.split('.')[0]!])
  return whole !== null && whole !== undefined
}

/** A label or help of a field: the calculator's own, or the one that several share. */
export function fieldWords(calculator: Mechanism['calculator'], key: string): { label: string; help?: string } {
  const { labels, helps } = words().timingInputs
  const label = labels[calculator]?.[key] ?? labels['all']![key] ?? key
  const help = helps[calculator]?.[key] ?? helps['all']![key]
  return help === undefined ? { label } : { label, help }
}

/** Keys of a dotted path; those of a list are numbers. */
const keysOf = (key: string): Place => key.split('.').map((each) => (/^\d+$/.test(each) ? Number(each) : each))

function FormField(props: Of & { field: Field }) {
  const { mechanism, field, game, option } = props
  const edit = useEdit()
  const texts = words().timingInputs
  const inside = [...props.place, 'input']
  if (field.kind === 'legs') return <LegsField place={inside} game={game} option={option} />
  const place = [...inside, ...keysOf(field.key)]
  const { label, help } = fieldWords(mechanism.calculator, field.key)
  switch (field.kind) {
    case 'part':
      return <PartField place={place} label={label} kind={field.part} />
    case 'yesNo':
      return <YesNo place={place} label={label} />
    case 'present': {
      const problem = problemAt(edit.problems, place)
      return (
        <div className="whole-row">
          <Present place={place} label={label} fresh={field.fresh} />
          {problem && <p className="loss small">{problem}</p>}
        </div>
      )
    }
    case 'choice':
      return (
        <SelectField
          place={place}
          label={label}
          choices={field.of.map((value) => ({ value, label: texts.choices[value] ?? value }))}
        />
      )
    case 'number': {
      if (field.fresh === undefined) return <UncertainField {...{ place, label, help }} number={field} />
      const missing = valueAt(edit.document, place) === null
      return (
        <div className="stack">
          {!missing && <UncertainField {...{ place, label, help }} number={field} />}
          <Present place={place} label={texts.set(label)} fresh={field.fresh} />
          {missing && help && <p className="soft small">{help}</p>}
        </div>
      )
    }
  }
}
