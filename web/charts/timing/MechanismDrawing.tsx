import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import type { MechanismAnswer } from '../../../src/model/timing/index.ts'
import { words } from '../../words/catalogue.ts'
import { type ChartTable, Figure } from '../Figure.tsx'
import { useDrawn } from '../useDrawn.ts'
import { useWidth } from '../useWidth.ts'
import { drawn } from './drawings/drawn.tsx'
import { MomentSlider } from './MomentSlider.tsx'
import { useMoment } from './moment.ts'
import { sayTime } from './say.ts'
import './timing.css'
import type { Measures } from './told/told.ts'
import { usePlay } from './usePlay.ts'
import { type Shown, useShown } from './useShown.ts'

/** Wider than this a drawing gains nothing. */
const widest = 720

/**
 * The mechanism from the side and to scale at its likely numbers, at a moment of its movement that a slider chooses or that
 * plays in true time. One that can not do it is drawn as far as its numbers go.
 */
export function MechanismDrawing({ mechanism, answer }: { mechanism: Mechanism; answer: MechanismAnswer }) {
  const shown = useShown(mechanism, answer)
  useDrawn('mechanism', shown)
  const seconds = shown.curves ? shown.curves.time.at(-1)! : null
  const { measures } = drawn(shown, 0, widest)
  return (
    <div className="mechanism">
      <Figure title={words().timingCharts.drawing(mechanism.name)} hideTitle table={tableOf(measures, seconds)}>
        <Moving id={mechanism.id} shown={shown} seconds={seconds} />
      </Figure>
    </div>
  )
}

/** What another moment draws anew; the table stays as it is. */
function Moving({ id, shown, seconds }: { id: string; shown: Shown; seconds: number | null }) {
  const { ref, width } = useWidth<HTMLDivElement>()
  const [share, choose] = useMoment(id)
  const now = drawn(shown, share, Math.min(widest, width))
  return (
    <>
      <div ref={ref} className="mechanism-picture">
        {now.picture}
      </div>
      {seconds === null ? (
        <p className="small">{words().timingCharts.still}</p>
      ) : (
        <Controls seconds={seconds} share={share} state={now.state.join(' · ')} choose={choose} />
      )}
      <p className="soft small">{now.sentences.join(' ')}</p>
    </>
  )
}

function Controls(props: { seconds: number; share: number; state: string; choose(share: number): void }) {
  const { seconds, share, choose } = props
  const text = words().timingCharts
  const { playing, play, stop } = usePlay(seconds, choose)
  const said = text.at(sayTime(share * seconds), props.state)
  return (
    <>
      <div className="mechanism-controls no-print">
        {play && (
          <button type="button" className="plain-button" onClick={playing ? stop : play}>
            {playing ? text.stop : text.play}
          </button>
        )}
        <MomentSlider
          label={text.moment}
          share={share}
          said={said}
          onShare={(next) => {
            stop()
            choose(next)
          }}
        />
      </div>
      <p className="small numerals">{said}</p>
    </>
  )
}

function tableOf(measures: Measures, seconds: number | null): ChartTable {
  const text = words().timingCharts
  const takes: [string, string][] = seconds === null ? [] : [[text.names.takes, sayTime(seconds)]]
  return { head: [text.measures, text.value], rows: [...takes, ...measures] }
}
