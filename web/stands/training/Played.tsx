import { useEffect, useState } from 'react'
import type { Game } from '../../../src/model/documents/types.ts'
import { symmetricImage } from '../../../src/model/field/symmetry.ts'
import { feel, hand, redWall } from '../parts/choices.ts'
import { FieldDrawing, type Mark, marksOf } from '../parts/FieldDrawing.tsx'
import { useAwake } from '../parts/useAwake.ts'
import { useNow } from '../parts/useNow.ts'
import { leftOf, lengthOf, minutes, periodAt } from '../record/clock.ts'
import type { About, Tap } from '../record/draft.ts'
import { formOf } from '../record/form.ts'
import { seatName, tapName } from '../record/names.ts'
import { seats } from '../record/seats.ts'
import { steadyNow } from '../record/steady.ts'
import { PeriodChoice } from '../screens/draft/PeriodChoice.tsx'
import { TapPad } from '../screens/draft/TapPad.tsx'
import { useWords } from '../words/catalogue.ts'
import { type Film, whereAt } from './film.ts'

/** The match at its real speed, with the buttons of the stands below it. */
export function Played(props: {
  game: Game
  film: Film
  robot: number
  mode: About['mode']
  end(taps: Tap[], until: number): void
}) {
  const { game, film, robot, mode, end } = props
  const words = useWords()
  const [begun] = useState(steadyNow)
  const [taps, setTaps] = useState<Tap[]>([])
  const [period, setPeriod] = useState<'auto' | 'teleop'>('auto')
  const counts = mode === 'counts'
  const elapsed = Math.max(0, (useNow(100, true) - begun) / 1000)
  const over = elapsed >= lengthOf(game.clock)
  const seat = seats[robot]!
  const view = { alliance: seat.alliance, redWall: redWall.use() }
  useAwake(true)
  useEffect(() => {
    if (over) end(taps, elapsed)
  }, [over, end, taps, elapsed])

  const marks = film.robots.flatMap(({ came, track }, index): Mark[] => {
    if (!came) return []
    const { alliance, position } = seats[index]!
    const own = whereAt(track, elapsed)
    const at = alliance === seat.alliance ? own : symmetricImage(game.field, own)
    const sign = `${words.match[alliance][0]}${position}`
    return [{ id: `robot ${index}`, at, sign, shape: 'robot', strong: index === robot }]
  })
  const last = taps.at(-1)
  return (
    <div className={`training ${hand.use()}`}>
      <div className="titled">
        <p role="timer" aria-live="off">
          <strong className="big">{minutes(leftOf(game.clock, elapsed))}</strong>{' '}
          {words.running[periodAt(game.clock, elapsed)]} · {words.training.watch(seatName(seat))}
        </p>
        <button type="button" onClick={() => end(taps, elapsed)}>
          {words.training.stop}
        </button>
      </div>
      <FieldDrawing
        game={game}
        view={view}
        marks={[...marksOf(game), ...marks]}
        label={words.training.drawing(seatName(seat))}
      />
      {counts && <PeriodChoice period={period} choose={setPeriod} />}
      <TapPad
        form={formOf(game, { subject: 'robot', mode })}
        taps={taps}
        press={(press) => {
          feel('tap')
          const tap = { ...press, elapsed: (steadyNow() - begun) / 1000, ...(counts && { period }) }
          setTaps((before) => [...before, tap])
        }}
        undo={{
          run: () => setTaps((before) => before.slice(0, -1)),
          name: last ? words.running.undo(tapName(game, last)) : words.running.nothing,
          possible: last !== undefined,
        }}
        game={game}
      />
    </div>
  )
}
