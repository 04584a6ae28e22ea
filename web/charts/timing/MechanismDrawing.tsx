import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import type { MechanismAnswer } from '../../../src/model/timing/index.ts'
import { words } from '../../words/catalogue.ts'
import { type ChartTable, Figure } from '../Figure.tsx'
import { useDrawn } from '../useDrawn.ts'
import { useWidth } from '../useWidth.ts'
import { type DrawnMoment, drawn } from './drawings/drawn.tsx'
import { MomentSlider } from './MomentSlider.tsx'
import { useMoment } from './moment.ts'
import { sayTime } from './say.ts'
import './timing.css'
import { usePlay } from './usePlay.ts'
import { useShown } from './useShown.ts'

/** Wider than this a drawing gains nothing. */
const widest = 720

/**
 * The mechanism from the side and to scale at its likely numbers, at a moment of its movement that a slider chooses or that
 * plays in true time. One that can not do it is drawn as far as its numbers go.
 */
export function MechanismDrawing({ mechanism, answer }: { mechanism: Mechanism; answer: MechanismAnswer }) {
  const { ref, width } = useWidth<HTMLDivElement>()
  const shown = useShown(mechanism, answer)
  const [share, choose] = useMoment(mechanism.id)
  useDrawn('mechanism', shown)
  const text = words().timingCharts
  const now = drawn(shown, share, Math.min(widest, width))
  const seconds = shown.curves ? shown.curves.time.at(-1)! : null
  return (
    <div className="mechanism">
      <Figure title={text.drawing(mechanism.name)} hideTitle table={tableOf(now, seconds)}>
        <div ref={ref} className="mechanism-picture">
          {now.picture}
        </div>
        {seconds === null ? (
          <p className="small">{text.still}</p>
        ) : (
          <Controls seconds={seconds} share={share} state={now.state.join(' · ')} choose={choose} />
        )}
        <p className="soft small">{now.sentences.join(' ')}</p>
      </Figure>
    </div>
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

function tableOf(now: DrawnMoment, seconds: number | null): ChartTable {
  const text = words().timingCharts
  const takes: [string, string][] = seconds === null ? [] : [[text.names.takes, sayTime(seconds)]]
  return { head: [text.measures, text.value], rows: [...takes, ...now.measures] }
}
