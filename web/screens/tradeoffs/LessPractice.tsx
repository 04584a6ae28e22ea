import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { ComparisonRecord } from '../../../src/model/documents/records.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { type NumberRules, readNumber } from '../../shell/fields/parse.ts'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'
import { practiceChoices, practiceInput } from './practiceChoices.ts'

const fields = ['share', 'low', 'likely', 'high'] as const
type Field = (typeof fields)[number]

const rules: Record<Field, NumberRules> = {
  share: { above: 0, max: 0.5, percent: true },
  low: { min: 0, max: 120 },
  likely: { min: 0, max: 120 },
  high: { above: 0, max: 120 },
}

/** Adds 'n days less practice' to the unknowns: whose, what suffers, what a day is worth, and how many days. */
export function LessPractice(props: { record: ComparisonRecord; documents: { game: Game; options: Option[] } }) {
  const { record, documents } = props
  const { game, options } = documents
  const edit = useEdit()
  const text = words().practice
  const [option, setOption] = useState(0)
  const [what, setWhat] = useState('pace')
  const [typed, setTyped] = useState<Record<Field, string>>({ share: '1', low: '0', likely: '3', high: '10' })
  const [trouble, setTrouble] = useState<string | null>(null)
  if (options.length === 0) return null
  const index = Math.min(option, options.length - 1)
  const choices = practiceChoices(game, options, index)
  const choice = choices.find(({ id }) => id === what) ?? choices[0]!
  const read = Object.fromEntries(fields.map((field) => [field, readNumber(typed[field], rules[field])])) as Record<
    Field,
    ReturnType<typeof readNumber>
  >
  const add = () => {
    const values = fields.map((field) => ('value' in read[field] ? read[field].value : null))
    if (values.includes(null)) return
    const [perDay, low, likely, high] = values as [number, number, number, number]
    const falls = choice.paths.every((path) => path.endsWith('/success'))
    if (!(low <= likely && likely <= high)) return setTrouble(text.order)
    if (falls && high * perDay > 1) return setTrouble(text.tooMany(plain(Math.floor(1 / perDay), 0)))
    const robot = options[index]!.robot.name
    const input = practiceInput(choice, { robot, perDay, days: [low, likely, high] })
    const others = record.inputs.filter(({ id }) => id !== input.id)
    setTrouble(null)
    edit.set([], { ...record, inputs: [...others, input], breakEven: record.breakEven ?? input.id })
  }
  const field = (name: Field, label: string, unit: string) => (
    <TextInput
      label={label}
      inputMode="decimal"
      autoComplete="off"
      value={typed[name]}
      error={'error' in read[name] ? read[name].error : null}
      rightSection={<span className="soft">{unit}</span>}
      rightSectionWidth={52}
      rightSectionPointerEvents="none"
      onChange={(event) => setTyped({ ...typed, [name]: event.currentTarget.value })}
    />
  )
  return (
    <details className="fold">
      <summary>{text.title}</summary>
      <div className="stack">
        <p>{text.how}</p>
        <div className="form-grid">
          <NativeSelect
            label={text.option}
            value={String(index)}
            data={options.map(({ name }, place) => ({ value: String(place), label: name }))}
            onChange={(event) => setOption(Number(event.currentTarget.value))}
          />
          <NativeSelect
            label={text.what}
            value={choice.id}
            data={choices.map(({ id, name }) => ({ value: id, label: name }))}
            onChange={(event) => setWhat(event.currentTarget.value)}
          />
          {field('share', text.share, '%')}
          {field('low', text.low, text.unit)}
          {field('likely', text.likely, text.unit)}
          {field('high', text.high, text.unit)}
        </div>
        {trouble && (
          <p role="alert" className="loss">
            {trouble}
          </p>
        )}
        <div>
          <Button variant="default" onClick={add}>
            {text.add}
          </Button>
        </div>
        <p className="soft small">{text.means}</p>
      </div>
    </details>
  )
}
