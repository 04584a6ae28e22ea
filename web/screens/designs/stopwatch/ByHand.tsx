import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { TimedTrial } from '../../../../src/model/documents/timing.ts'
import { readNumber } from '../../../shell/fields/parse.ts'
import { words } from '../../../words/catalogue.ts'

/** A time that was not taken here. */
export function ByHand(props: { onAdd(trial: TimedTrial): void }) {
  const texts = words().stopwatch.hand
  const [typed, setTyped] = useState('')
  const [trouble, setTrouble] = useState<string | null>(null)
  const add = () => {
    const read = readNumber(typed, { min: 0, max: 600 })
    if ('error' in read) return setTrouble(read.error)
    setTrouble(null)
    setTyped('')
    props.onAdd({ id: crypto.randomUUID(), seconds: read.value, at: new Date().toISOString(), struck: null })
  }
  return (
    <form
      className="stack"
      aria-label={texts.title}
      onSubmit={(event) => {
        event.preventDefault()
        add()
      }}
    >
      <h2>{texts.title}</h2>
      <div className="row by-hand">
        <TextInput
          label={texts.label}
          description={texts.help}
          inputMode="decimal"
          autoComplete="off"
          rightSection={<span className="soft">s</span>}
          value={typed}
          error={trouble}
          onChange={(event) => {
            setTyped(event.currentTarget.value)
            setTrouble(null)
          }}
        />
        <Button type="submit" variant="default">
          {texts.add}
        </Button>
      </div>
    </form>
  )
}
