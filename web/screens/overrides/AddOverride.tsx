import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { Override } from '../../../src/model/documents/records.ts'
import { idFrom } from '../../data/identity.ts'
import { endChoices } from '../../words/actions.ts'
import { words } from '../../words/catalogue.ts'
import { choicesOf, overrideFrom, type Typed, type Wrong } from './choices.ts'
import type { Documents } from './words.ts'

const empty: Typed = { value: '', low: '', high: '', reason: '', who: '' }

/** Sets an own number in place of a computed one: which, what, why, who. */
export function AddOverride(props: {
  overrides: readonly Override[]
  documents: Documents
  onAdd(override: Override): void
}) {
  const { overrides, documents } = props
  const texts = words().overrides.add
  const choices = choicesOf(documents, overrides)
  const [key, setKey] = useState<string | null>(null)
  const [typed, setTyped] = useState(empty)
  const [wrong, setWrong] = useState<Wrong>({})
  const [ends, setEnds] = useState({ from: '', to: '' })
  const chosen = choices.find((choice) => choice.key === key) ?? choices[0]
  if (!chosen) return <p className="soft">{texts.already}</p>
  const { kind } = chosen.about
  const leg = kind === 'leg'
  const about = chosen.about.kind === 'travel' ? { ...chosen.about, ...ends } : chosen.about
  const field = (name: keyof Typed, label: string, numeric = false) => (
    <TextInput
      label={label}
      value={typed[name]}
      error={wrong[name]}
      inputMode={numeric ? 'decimal' : 'text'}
      autoComplete="off"
      maxLength={160}
      onChange={(event) => setTyped({ ...typed, [name]: event.currentTarget.value })}
    />
  )
  const add = () => {
    const made = { id: idFrom('own'), now: new Date().toISOString(), overrides }
    const found = overrideFrom(about, typed, made)
    if ('wrong' in found) return setWrong(found.wrong)
    setWrong({})
    setTyped({ ...empty, who: typed.who })
    setKey(null)
    setEnds({ from: '', to: '' })
    props.onAdd(found.override)
  }
  return (
    <form
      className="no-print"
      aria-label={texts.title}
      onSubmit={(event) => {
        event.preventDefault()
        add()
      }}
    >
      <fieldset className="stack">
        <legend>{texts.title}</legend>
        <NativeSelect
          label={texts.what}
          value={chosen.key}
          data={choices.map((choice) => ({ value: choice.key, label: choice.name }))}
          onChange={(event) => {
            setKey(event.currentTarget.value)
            setWrong({})
          }}
          description={texts.means[kind]}
        />
        <div className="form-grid">
          {kind === 'travel' &&
            (['from', 'to'] as const).map((end) => (
              <NativeSelect
                key={end}
                label={texts[end]}
                value={ends[end]}
                error={end === 'to' ? wrong.ends : undefined}
                data={[{ value: '', label: texts.chooseEnd }, ...endChoices(documents.game)]}
                onChange={(event) => setEnds({ ...ends, [end]: event.currentTarget.value })}
              />
            ))}
          {field('value', texts.values[kind], true)}
          {leg && field('low', texts.low, true)}
          {leg && field('high', texts.high, true)}
          {field('reason', texts.reason)}
          {field('who', texts.who)}
        </div>
        <div>
          <Button type="submit" variant="default">
            {texts.button}
          </Button>
        </div>
      </fieldset>
    </form>
  )
}
