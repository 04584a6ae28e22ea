import { type ReactNode, useEffect, useId, useRef } from 'react'
import { createPortal } from 'react-dom'
import { words } from '../words/catalogue.ts'
import './panel.css'

/** A panel over the screen. The browser's own dialog keeps the focus in it, and Escape closes it. */
export function Panel(props: {
  title: string
  open: boolean
  onClose: () => void
  side?: boolean
  children: ReactNode
}) {
  const ref = useRef<HTMLDialogElement>(null)
  const id = useId()
  // By the dialog itself, which gives the focus back to what opened it.
  const close = () => ref.current?.close()
  useEffect(() => {
    const dialog = ref.current
    if (!dialog) return
    if (props.open && !dialog.open) dialog.showModal()
    if (!props.open && dialog.open) dialog.close()
  }, [props.open])
  // At the end of the page: what opens it may stand in a paragraph, which holds no dialog.
  return createPortal(
    // biome-ignore lint/a11y/useKeyWithClickEvents: Escape closes it, the click outside is for the mouse
    <dialog
      ref={ref}
      className={props.side ? 'panel side no-print' : 'panel no-print'}
      aria-labelledby={id}
      onClose={props.onClose}
      onClick={(event) => {
        if (event.target === ref.current) close()
      }}
    >
      {props.open && (
        <div className="panel-inside stack">
          <div className="row spread panel-head">
            <h2 id={id}>{props.title}</h2>
            <button type="button" className="plain-button" onClick={close}>
              {words().shell.close}
            </button>
          </div>
          {props.children}
        </div>
      )}
    </dialog>,
    document.body,
  )
}
