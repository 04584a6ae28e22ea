import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { Guess } from '../../../src/model/sheet/index.ts'
import { keepOwnGuess, ownGuess, thisDevice } from '../../data/device.ts'
import { useRoundChanges } from '../../data/rounds.ts'
import { readNumber } from '../../shell/fields/parse.ts'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'

type Texts = { [key in keyof Guess]: string }
type Errors = { [key in keyof Guess]?: string }

const keys = ['low', 'likely', 'high'] as const

/** The three numbers as typed, or what is wrong with which of them. */
export function readGuess(typed: Texts): { guess: Guess } | { errors: Errors } {
  const texts = words().guess
  const errors: Errors = {}
  const guess: Guess = { low: 0, likely: 0, high: 0 }
  for (const key of keys) {
    const read = readNumber(typed[key])
    if (typed[key].trim() === '') errors[key] = texts.needed
    else if ('error' in read) errors[key] = texts.needed
    else if (read.value < 0 || read.value > 600) errors[key] = texts.outside
    else guess[key] = read.value
  }
  if (Object.keys(errors).length > 0) return { errors }
  if (guess.low > guess.likely) return { errors: { likely: texts.order } }
  if (guess.likely > guess.high) return { errors: { high: texts.order } }
  return { guess }
}

/** Three numbers on a phone. They can be corrected until the round is closed. */
export function GuessForm(props: { code: string; count: number }) {
  const texts = words().guess
  const [before, setBefore] = useState(() => ownGuess(props.code))
  const [typed, setTyped] = useState<Texts>({
    low: before ? plain(before.low) : '',
    likely: before ? plain(before.likely) : '',
    high: before ? plain(before.high) : '',
  })
  const [errors, setErrors] = useState<Errors>({})
  const { give } = useRoundChanges()
  const send = async () => {
    const read = readGuess(typed)
    setErrors('errors' in read ? read.errors : {})
    if ('errors' in read) return
    try {
      await give.mutateAsync({ code: props.code, device: thisDevice(), guess: read.guess })
      keepOwnGuess(props.code, read.guess)
      setBefore(read.guess)
    } catch {
      // Said below; what is typed stays.
    }
  }
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        void send()
      }}
    >
      {keys.map((key) => (
        <TextInput
          key={key}
          size="lg"
          label={texts[key]}
          description={key === 'low' ? texts.lowHelp : key === 'high' ? texts.highHelp : undefined}
          inputMode="decimal"
          autoComplete="off"
          value={typed[key]}
          error={errors[key] ?? null}
          onChange={(event) => setTyped({ ...typed, [key]: event.currentTarget.value })}
        />
      ))}
      <Button type="submit" size="lg" loading={give.isPending}>
        {before ? texts.correct : texts.send}
      </Button>
      {give.error && (
        <p role="alert" className="loss">
          {give.error.message}
        </p>
      )}
      <div role="status" className="stack">
        {before && !give.error && (
          <>
            <p>
              <strong>{texts.sent}</strong>
            </p>
            <p>{texts.yours(plain(before.low), plain(before.likely), plain(before.high))}</p>
          </>
        )}
        <p>{texts.count(props.count)}</p>
      </div>
      <p className="soft small">
        {texts.blind} {before && texts.waiting}
      </p>
    </form>
  )
}
