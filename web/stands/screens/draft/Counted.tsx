import { useState } from 'react'
import { Choice } from '../../parts/Choice.tsx'
import { Field } from '../../parts/Field.tsx'
import type { Said } from '../../record/draft.ts'
import { useWords } from '../../words/catalogue.ts'

/** What a record without times says of times. */
export function Counted(props: {
  said: Said
  say(said: Partial<Said>): void
  /** What stands in a field and is no number: it has to be mended before the record is kept. */
  wrong(field: string, is: boolean): void
}) {
  const { said, say, wrong } = props
  const texts = useWords().check
  return (
    <>
      <Seconds
        label={texts.lost}
        value={said.lostSeconds}
        change={(lostSeconds) => say({ lostSeconds })}
        wrong={(is) => wrong('lost', is)}
      />
      <Seconds
        label={texts.defending}
        value={said.defending}
        change={(defending) => say({ defending })}
        wrong={(is) => wrong('defending', is)}
      />
      <Choice<Said['defended']>
        label={texts.defended}
        value={said.defended}
        choose={(defended) => say({ defended })}
        options={[
          { value: 'none', name: texts.none_ },
          { value: 'some', name: texts.some },
          { value: 'heavy', name: texts.heavy },
          { value: undefined, name: texts.unknown },
        ]}
      />
    </>
  )
}

/** What is no number stays in the field and is not taken. */
function Seconds(props: {
  label: string
  value: number | undefined
  change(value: number | undefined): void
  wrong(is: boolean): void
}) {
  const texts = useWords().check
  const [typed, setTyped] = useState(props.value === undefined ? '' : String(props.value))
  const read = (text: string) => (text.trim() === '' ? undefined : Number(text.replace(',', '.')))
  const value = read(typed)
  const isBad = (seconds: number | undefined) => seconds !== undefined && !(seconds >= 0 && seconds <= 1200)
  const bad = isBad(value)
  return (
    <Field
      label={props.label}
      inputMode="decimal"
      value={typed}
      maxLength={8}
      error={bad ? texts.badSeconds(typed) : null}
      change={(text) => {
        setTyped(text)
        const next = read(text)
        props.change(isBad(next) ? undefined : next)
        props.wrong(isBad(next))
      }}
    />
  )
}
