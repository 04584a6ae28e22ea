import { useEffect, useState } from 'react'
import type { Game } from '../../../src/model/documents/types.ts'
import { Choice } from '../parts/Choice.tsx'
import { useKnown } from '../parts/means.tsx'
import { Screen } from '../parts/Screen.tsx'
import type { About, Tap } from '../record/draft.ts'
import { seatName } from '../record/names.ts'
import { seats } from '../record/seats.ts'
import { useWords } from '../words/catalogue.ts'
import { askFilm, type Film } from './film.ts'
import { Played } from './Played.tsx'
import { Result } from './Result.tsx'

/** A simulated match to record, and what was missed of it. Nothing of it is kept or sent. */
export default function Training() {
  const texts = useWords().training
  const known = useKnown()
  const pack = known?.pack?.pack
  return <Screen title={texts.title}>{pack && <Match event={pack.event.id} game={pack.game.body} />}</Screen>
}

const anySeed = () => Math.floor(Math.random() * 1e6)

function Match({ event, game }: { event: string; game: Game }) {
  const words = useWords()
  const texts = words.training
  const [seed, setSeed] = useState(anySeed)
  const [film, setFilm] = useState<Film | 'failed' | null>(null)
  const [robot, setRobot] = useState(0)
  const [mode, setMode] = useState<About['mode']>('timeline')
  const [runs, setRuns] = useState(false)
  const [done, setDone] = useState<{ taps: Tap[]; until: number } | null>(null)

  useEffect(() => {
    let here = true
    setFilm(null)
    setDone(null)
    askFilm(fetch, { event, seed, now: Date.now() }).then((found) => {
      if (here) setFilm('failed' in found ? 'failed' : found.answer)
    })
    return () => {
      here = false
    }
  }, [event, seed])

  if (film === null) return <p className="soft">{texts.loading}</p>
  const another = (
    <button type="button" onClick={() => setSeed(anySeed())}>
      {film === 'failed' ? words.app.retry : texts.another}
    </button>
  )
  if (film === 'failed')
    return (
      <>
        <p>{texts.failed}</p>
        {another}
      </>
    )
  const seat = seats[robot]!
  if (runs)
    return (
      <Played
        game={game}
        film={film}
        robot={robot}
        mode={mode}
        end={(taps, until) => {
          setRuns(false)
          setDone({ taps, until })
        }}
      />
    )
  return (
    <>
      {done ? <Result game={game} mode={mode} truth={film.robots[robot]!.happened} {...done} /> : <p>{texts.intro}</p>}
      <Choice
        label={texts.robot}
        value={robot}
        choose={(next) => {
          setRobot(next)
          setDone(null)
        }}
        options={seats.flatMap((each, value) => (film.robots[value]?.came ? [{ value, name: seatName(each) }] : []))}
      />
      <Choice
        label={words.choose.how}
        value={mode}
        choose={(next) => {
          setMode(next)
          setDone(null)
        }}
        options={(['timeline', 'counts'] as const).map((value) => ({ value, name: words.choose[value] }))}
      />
      <p>{texts.watch(seatName(seat))}</p>
      {another}
      <button type="button" className="strong huge" onClick={() => setRuns(true)}>
        {texts.begin}
      </button>
    </>
  )
}
