import { type ReactNode, Suspense, useCallback, useEffect, useId, useRef, useState } from 'react'
import type { GlossaryWord } from '../words/glossary.ts'
import { place } from './beside.ts'
import { screen } from './screen.ts'
import './term.css'

const Meaning = screen(() => import('./Meaning.tsx'))

/**
 * A word that may be new, with what it means one press away. Shown over the page by the browser's own popover, which
 * Escape and a press elsewhere close.
 */
export function Term(props: { word: GlossaryWord; children: ReactNode }) {
  const id = useId()
  const button = useRef<HTMLButtonElement>(null)
  const popover = useRef<HTMLSpanElement>(null)
  const [open, setOpen] = useState(false)
  useEffect(() => {
    const shown = popover.current
    if (!shown) return
    const toggle = (event: Event) => setOpen((event as ToggleEvent).newState === 'open')
    shown.addEventListener('toggle', toggle)
    return () => shown.removeEventListener('toggle', toggle)
  }, [])
  const settle = useCallback(() => place(popover.current!, button.current!), [])
  const press = () => {
    // Older browsers have no popover: there the page of all words says the same.
    if (popover.current?.togglePopover) popover.current.togglePopover()
    else location.assign(`/help#${props.word}`)
  }
  return (
    <>
      <button ref={button} type="button" className="term" aria-expanded={open} aria-controls={id} onClick={press}>
        {props.children}
      </button>
      <span ref={popover} id={id} popover="auto" className="term-means">
        {/* Read aloud when it appears, without moving the focus. */}
        <span role="status">
          {open && (
            <Suspense>
              <Meaning word={props.word} onShown={settle} />
            </Suspense>
          )}
        </span>
      </span>
    </>
  )
}
