import { type ReactNode, useState } from 'react'
import './parts.css'

/**
 * A part of a screen that answers a rarer question: its heading opens and closes it. What is folded stays drawn at its
 * width, so that it is there at once when it is opened, and whole on paper.
 */
export function Fold(props: { id: string; title: string; level?: 2 | 3 | 5; open?: boolean; children: ReactNode }) {
  const { id, title, level = 2 } = props
  const [open, setOpen] = useState(props.open ?? false)
  const Heading = `h${level}` as const
  return (
    <>
      <Heading id={id}>
        <button
          type="button"
          className="fold-head"
          aria-expanded={open}
          aria-controls={`${id}-body`}
          onClick={() => setOpen(!open)}
        >
          {title}
        </button>
      </Heading>
      <div id={`${id}-body`} className={open ? 'stack' : 'stack folded'}>
        {props.children}
      </div>
    </>
  )
}
