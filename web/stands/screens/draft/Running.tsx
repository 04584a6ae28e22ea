import { useEffect, useRef, useState } from 'react'
import type { Point } from '../../../../src/model/documents/types.ts'
import { feel, hand } from '../../parts/choices.ts'
import { linkTo } from '../../parts/place.ts'
import { StatusBar } from '../../parts/StatusBar.tsx'
import { useAwake } from '../../parts/useAwake.ts'
import { useNow } from '../../parts/useNow.ts'
import { elapsedOf, lengthOf, minutes, periodAt } from '../../record/clock.ts'
import { formOf, type Press } from '../../record/form.ts'
import { tapName } from '../../record/names.ts'
import type { Desk } from '../../record/useDraft.ts'
import { useWords } from '../../words/catalogue.ts'
import { ClockBar } from './ClockBar.tsx'
import { PeriodChoice } from './PeriodChoice.tsx'
import { TapPad } from './TapPad.tsx'
import { Where } from './Where.tsx'

/** The match itself: one thumb, the eyes on the field. */
export function Running({ desk, title }: { desk: Desk; title: string }) {
  const texts = useWords()
  const { draft, taps, game } = desk
  const { about, clock } = draft
  const runs = clock.since !== null
  const timed = about.mode === 'timeline'
  const now = useNow(200, runs || !timed)
  const [touched, setTouched] = useState(now)
  const elapsed = elapsedOf(clock, now)
  const over = timed && elapsed >= lengthOf(game.clock)
  // Who only counts starts no clock: so long after the last tap no match goes on.
  useAwake(timed ? runs && !over : now - touched < lengthOf(game.clock) * 1000)
  useBuzzAtEnd(over)
  const [where, setWhere] = useState<Point | null>(null)
  const [period, setPeriod] = useState<'auto' | 'teleop'>('auto')
  const [undone, setUndone] = useState('')
  const form = formOf(game, about)

  const press = (pressed: Press) => {
    const place = where ? { x: where[0], y: where[1] } : {}
    const at = runs ? (periodAt(game.clock, elapsed) === 'teleop' ? 'teleop' : 'auto') : period
    desk.press({ ...pressed, ...place }, timed ? undefined : at)
    setWhere(null)
    setTouched(now)
    setUndone('')
  }
  const undo = () => {
    const taken = desk.undo()
    if (taken) setUndone(texts.running.undone(tapName(game, taken)))
  }
  const last = taps.at(-1)

  return (
    <div className={`recorder ${hand.use()}`}>
      <header className="top">
        <a className="back" href={linkTo({ screen: 'home' })} aria-label={texts.app.back}>
          ‹
        </a>
        <StatusBar />
      </header>
      <main className="recorder-top">
        <div className="titled">
          <h1>{title}</h1>
          <button type="button" className={over ? 'strong' : ''} onClick={() => desk.change({ step: 'check' })}>
            {texts.running.end}
          </button>
        </div>
        {timed ? <ClockBar desk={desk} elapsed={elapsed} /> : <PeriodChoice period={period} choose={setPeriod} />}
        {timed && about.subject === 'robot' && <Where desk={desk} where={where} touched={setWhere} />}
        <p className="last" aria-live="polite">
          {desk.keeping ? (
            // Told again when it is kept, with its time: only then is it sure to be there after a crash.
            <span aria-hidden="true">{last && `${tapName(game, last)} …`}</span>
          ) : (
            undone ||
            (last
              ? `${tapName(game, last)}${timed ? ` ${texts.running.at(minutes(last.elapsed + clock.shift))}` : ''}`
              : texts.running.none)
          )}
        </p>
        {desk.notKept && (
          <p className="wrong" role="alert">
            {texts.running.notKept}
          </p>
        )}
      </main>
      <TapPad
        game={game}
        form={form}
        taps={taps}
        press={press}
        undo={{
          run: undo,
          name: last ? texts.running.undo(tapName(game, last)) : texts.running.nothing,
          possible: last !== undefined,
        }}
      />
    </div>
  )
}

/** Once, when the match is over: whoever looks at the field feels it. */
function useBuzzAtEnd(over: boolean): void {
  const before = useRef(over)
  useEffect(() => {
    if (over && !before.current) feel('end')
    before.current = over
  }, [over])
}
