import { type ReactNode, useEffect, useRef } from 'react'

/** What came of a press, brought into sight: what was pressed may have stood screens below it. Give it a key, so that the next one is brought too. */
export function Said(props: { trouble?: boolean; children: ReactNode }) {
  const line = useRef<HTMLParagraphElement>(null)
  useEffect(() => {
    line.current?.scrollIntoView({ block: 'center' })
    line.current?.focus({ preventScroll: true })
  }, [])
  return (
    <p
      ref={line}
      tabIndex={-1}
      role={props.trouble ? 'alert' : 'status'}
      className={props.trouble ? 'loss' : undefined}
    >
      {props.children}
    </p>
  )
}
