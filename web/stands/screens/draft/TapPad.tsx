import { useState } from 'react'
import type { Game } from '../../../../src/model/documents/types.ts'
import type { Tap } from '../../record/draft.ts'
import { type Begins, type Ends, type Form, openIntervals, type Press, togglePress } from '../../record/form.ts'
import { useWords } from '../../words/catalogue.ts'
import { Volley, VolleyButton } from './Volley.tsx'

/** The buttons of the match, in the lower part of the screen; what counts reaches to the thumb's edge. */
export function TapPad(props: {
  game: Game
  form: Form
  taps: readonly Tap[]
  press(press: Press): void
  undo: { run(): void; name: string; possible: boolean }
}) {
  const { form, taps, press, undo } = props
  const texts = useWords().running
  const [volley, setVolley] = useState<{ goal: string; n: number } | null>(null)
  const open = openIntervals(taps)

  if (volley) {
    const goal = form.goals.find(({ id }) => id === volley.goal)!
    return (
      <Volley
        goal={goal.name}
        from={volley.n}
        take={(n) => {
          press({ what: 'scored', goal: goal.id, n, counted: 'estimate' })
          setVolley(null)
        }}
        cancel={() => setVolley(null)}
      />
    )
  }
  return (
    <section className="pad" aria-label={texts.lastTaps}>
      {form.intervals.length > 0 && (
        <div className="pad-row even rare">
          {form.intervals.map((begins) => {
            const next = togglePress(begins, taps)
            return (
              <button
                key={begins}
                type="button"
                className="interval"
                aria-pressed={open.has(begins)}
                onClick={() => press(next)}
              >
                {texts[next.what as Begins | Ends]}
              </button>
            )
          })}
        </div>
      )}
      {(form.others.length > 0 || form.departs) && (
        <div className="pad-row even rare">
          {form.others.map((what) => (
            <button key={what} type="button" onClick={() => press({ what })}>
              {texts[what]}
            </button>
          ))}
          {form.departs && (
            <button type="button" onClick={() => press({ what: 'left' })}>
              {texts.left_}
            </button>
          )}
        </div>
      )}
      {form.sources.length > 0 && (
        <div className="pad-row even">
          {form.sources.map(({ id, name }) => (
            <button key={id} type="button" className="collect" onClick={() => press({ what: 'collected', source: id })}>
              {texts.collected(name)}
            </button>
          ))}
        </div>
      )}
      {form.goals.map(({ id, name }) => (
        <div key={id} className="pad-row goal">
          <button
            type="button"
            className="miss"
            aria-label={texts.missed(name)}
            onClick={() => press({ what: 'missed', goal: id })}
          >
            {texts.missedShort}
          </button>
          <VolleyButton
            name={texts.several(name)}
            open={(n) => setVolley({ goal: id, n })}
            take={(n) => press({ what: 'scored', goal: id, n, counted: 'estimate' })}
          />
          <button type="button" className="score" onClick={() => press({ what: 'scored', goal: id })}>
            {texts.scored(name)}
          </button>
        </div>
      ))}
      <div className="pad-row">
        <button type="button" className="undo" disabled={!undo.possible} onClick={undo.run}>
          {undo.name}
        </button>
      </div>
    </section>
  )
}
