import { useEffect, useMemo, useRef, useState } from 'react'
import { codeModules, drawModules } from './modules.ts'
import type { Shown } from './shown.ts'
import type { CodeTexts } from './texts.ts'
import './codes.css'

/** Codes a second: a camera takes 30 pictures in it, and each code wants to be looked at twice. */
const rates = { quick: 6, slow: 2 } as const

const calm = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches

/** A code to be read by another device's camera, as large as the screen lets it be. Black on white in every theme. */
export function CodeShown(props: { shown: Shown; label: string; texts: CodeTexts }) {
  const { shown, texts } = props
  const canvas = useRef<HTMLCanvasElement>(null)
  const [rate, setRate] = useState<keyof typeof rates>(calm() ? 'slow' : 'quick')
  const [index, setIndex] = useState(0)
  const runs = shown.kind === 'sequence'

  useEffect(() => {
    setIndex(0)
    if (!runs || !shown) return undefined
    const timer = setInterval(() => setIndex((before) => before + 1), 1000 / rates[rate])
    return () => clearInterval(timer)
  }, [runs, rate, shown])

  const modules = useMemo(
    () => (shown.kind === 'still' ? codeModules(shown.text, true) : codeModules(shown.frame(index), false)),
    [shown, index],
  )
  useEffect(() => {
    const place = canvas.current
    const draw = () => place && drawModules(place, modules, place.clientWidth * devicePixelRatio)
    draw()
    addEventListener('resize', draw)
    return () => removeEventListener('resize', draw)
  }, [modules])
  useAwake()

  return (
    <figure className="code-shown">
      <canvas ref={canvas} role="img" aria-label={props.label} data-index={index} />
      <figcaption>
        <span>{runs ? texts.runs(shown.needed) : texts.stands}</span>{' '}
        {runs && (
          <label>
            <input
              type="checkbox"
              checked={rate === 'slow'}
              onChange={(event) => setRate(event.currentTarget.checked ? 'slow' : 'quick')}
            />{' '}
            {texts.slower}
          </label>
        )}
      </figcaption>
    </figure>
  )
}

/** The screen stays on as long as the code is shown. */
function useAwake() {
  useEffect(() => {
    let held: WakeLockSentinel | null = null
    let over = false
    const hold = async () => {
      if (document.visibilityState !== 'visible') return
      try {
        held = await navigator.wakeLock?.request('screen')
        if (over) await held?.release()
      } catch {
        // A browser that refuses lets the screen go dark; a tap brings it back.
      }
    }
    void hold()
    // The system lets go of it whenever the page is out of sight.
    document.addEventListener('visibilitychange', hold)
    return () => {
      over = true
      document.removeEventListener('visibilitychange', hold)
      void held?.release()
    }
  }, [])
}
