import { useEffect, useRef } from 'react'
import { words } from '../words/catalogue.ts'

/** Asks before something is lost. */
export function Ask(props: { question: string; yes: string; sure(): void; not(): void }) {
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => dialog.current?.showModal(), [])
  return (
    <dialog ref={dialog} aria-label={props.question} onClose={props.not}>
      <p>{props.question}</p>
      <div className="line">
        <button type="button" onClick={props.not}>
          {words().app.cancel}
        </button>
        <button type="button" className="strong" onClick={props.sure}>
          {props.yes}
        </button>
      </div>
    </dialog>
  )
}
