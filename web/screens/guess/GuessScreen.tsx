import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import { useLocation } from 'wouter'
import { useArrival, useRound } from '../../data/rounds.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { Spread } from '../quickSheet/Spread.tsx'
import { GuessForm } from './GuessForm.tsx'
import './guess.css'

const everyMilliseconds = 3000

/** A phone in a round of blind guesses. */
export default function GuessScreen(props: { code?: string }) {
  const code = props.code?.toUpperCase()
  if (code === undefined || !/^[A-Z0-9]{6}$/.test(code)) return <Entrance wrong={code !== undefined} />
  return <Inside code={code} />
}

function Entrance(props: { wrong: boolean }) {
  const texts = words().guess
  const [, go] = useLocation()
  const [code, setCode] = useState('')
  const [wrong, setWrong] = useState(props.wrong)
  return (
    <form
      className="guess stack"
      onSubmit={(event) => {
        event.preventDefault()
        const typed = code.replace(/\s/g, '').toUpperCase()
        if (/^[A-Z0-9]{6}$/.test(typed)) go(`/guess/${typed}`)
        else setWrong(true)
      }}
    >
      <h1>{texts.title}</h1>
      <p>{texts.typeCode}</p>
      <TextInput
        label={texts.code}
        size="lg"
        value={code}
        autoCapitalize="characters"
        autoComplete="off"
        error={wrong ? texts.wrongCode : null}
        onChange={(event) => setCode(event.currentTarget.value)}
      />
      <Button type="submit" size="lg">
        {texts.go}
      </Button>
    </form>
  )
}

function Inside(props: { code: string }) {
  const texts = words().guess
  const round = useRound(props.code, everyMilliseconds)
  useArrival(props.code, round.data?.closedAt === null)
  if (round.isPending) return <Loading what={texts.loading} />
  if (!round.data) return <Trouble title={texts.notLoaded} error={round.error} retry={() => void round.refetch()} />
  const { about, leg, closedAt, guesses } = round.data
  const places = about.places.join(` ${texts.or} `)
  return (
    <div className="guess stack wide">
      <div className="stack">
        <p className="label">{about.way}</p>
        <h1>{texts.asks[leg](places)}</h1>
        <p>
          {leg === 'finish' ? '' : `${texts.load(about.load)} `}
          {texts.whole}
        </p>
      </div>
      {closedAt === null ? (
        <GuessForm code={props.code} count={round.data.count} />
      ) : (
        <section className="stack">
          <h2>{texts.closed}</h2>
          {guesses && guesses.length > 0 ? <Spread guesses={guesses} /> : <p>{texts.nobody}</p>}
        </section>
      )}
    </div>
  )
}
