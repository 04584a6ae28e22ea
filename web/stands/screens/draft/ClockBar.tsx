import { atSpeed, leftOf, minutes, periodAt, shifted, started, stopped } from '../../record/clock.ts'
import { steadyNow } from '../../record/steady.ts'
import type { Desk } from '../../record/useDraft.ts'
import { useWords } from '../../words/catalogue.ts'

const speeds = [0.5, 1, 2]

/** The match's clock, which can be shifted; that of a video also stopped and sped up. */
export function ClockBar({ desk, elapsed }: { desk: Desk; elapsed: number }) {
  const texts = useWords().running
  const { draft, game, change } = desk
  const { clock, about } = draft
  const period = periodAt(game.clock, elapsed)
  const shift = (by: number) => change({ clock: shifted(clock, by) })
  return (
    <>
      <div className="clock">
        <button type="button" aria-label={texts.earlier} onClick={() => shift(-1)}>
          −1 s
        </button>
        <p role="timer" aria-live="off">
          <strong>{minutes(leftOf(game.clock, elapsed))}</strong> <span>{texts[period]}</span>
        </p>
        <button type="button" aria-label={texts.later} onClick={() => shift(1)}>
          +1 s
        </button>
      </div>
      {about.origin !== 'live' && (
        <div className="line">
          {clock.since === null ? (
            <button type="button" onClick={() => change({ clock: started(clock, steadyNow()) })}>
              {texts.playVideo}
            </button>
          ) : (
            <button type="button" onClick={() => change({ clock: stopped(clock, steadyNow()) })}>
              {texts.pauseVideo}
            </button>
          )}
          {about.origin === 'video' &&
            speeds.map((speed) => (
              <button
                key={speed}
                type="button"
                aria-label={`${texts.speed} ${texts.times(speed)}`}
                aria-pressed={clock.speed === speed}
                onClick={() => change({ clock: atSpeed(clock, speed, steadyNow()) })}
              >
                {texts.times(speed)}
              </button>
            ))}
        </div>
      )}
    </>
  )
}
