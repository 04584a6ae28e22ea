import { useRef, useState } from 'react'
import { useWords } from '../../words/catalogue.ts'

/** Pieces of one volley at most, and so many for each step of a thumb that slides (px). */
const most = 60
const step = 9

const bounded = (n: number) => Math.min(most, Math.max(2, Math.round(n)))

/**
 * Pressed, it opens the slide; held and pulled sideways, it counts at once and takes the number when it is let go. Nothing needs
 * the pull: the slide says the same.
 */
export function VolleyButton(props: { name: string; open(n: number): void; take(n: number): void }) {
  const texts = useWords().running
  const from = useRef<number | null>(null)
  const [pulled, setPulled] = useState<number | null>(null)
  // A pull ends as a click, too.
  const taken = useRef(false)
  const end = () => {
    from.current = null
    setPulled(null)
  }
  return (
    <button
      type="button"
      className="volley"
      aria-label={props.name}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId)
        from.current = event.clientX
        taken.current = false
      }}
      onPointerMove={(event) => {
        if (from.current === null) return
        const way = Math.abs(event.clientX - from.current)
        if (pulled !== null || way > 2 * step) setPulled(bounded(way / step))
      }}
      onPointerUp={() => {
        if (pulled !== null) {
          taken.current = true
          props.take(pulled)
        }
        end()
      }}
      onPointerCancel={end}
      onClick={() => {
        if (!taken.current) props.open(10)
        taken.current = false
      }}
    >
      {pulled === null ? '≈' : texts.about(pulled)}
      {pulled !== null && <span className="pulled">{texts.about(pulled)}</span>}
    </button>
  )
}

/** 'About 12': one number for a volley that nobody can count. */
export function Volley(props: { goal: string; from: number; take(n: number): void; cancel(): void }) {
  const texts = useWords()
  const [n, setN] = useState(props.from)
  return (
    <section className="pad" aria-label={texts.running.volley(props.goal)}>
      <p className="big">{texts.running.volley(props.goal)}</p>
      <input
        type="range"
        min={2}
        max={most}
        value={n}
        aria-label={texts.running.volley(props.goal)}
        aria-valuetext={texts.running.about(n)}
        onChange={(event) => setN(Number(event.currentTarget.value))}
      />
      <div className="pad-row even">
        <button type="button" onClick={() => setN(bounded(n - 1))}>
          {texts.running.fewer}
        </button>
        <button type="button" onClick={() => setN(bounded(n + 1))}>
          {texts.running.more}
        </button>
      </div>
      <div className="pad-row even">
        <button type="button" onClick={props.cancel}>
          {texts.app.cancel}
        </button>
        <button type="button" className="score" onClick={() => props.take(n)}>
          {texts.running.volleyTake(n)}
        </button>
      </div>
    </section>
  )
}
