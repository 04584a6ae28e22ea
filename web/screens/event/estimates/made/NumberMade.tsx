import { type ReactNode, useState } from 'react'
import { createPortal } from 'react-dom'
import type { TeamEstimate } from '../../../../../src/model/scouting/estimates/types.ts'
import { words } from '../../../../words/catalogue.ts'
import type { EventPage } from '../../EventFrame.tsx'
import { MadePanel } from './MadePanel.tsx'
import type { Quantity } from './quantity.ts'

/** A number of a team that opens: what it is made of, down to the records. */
export function NumberMade(props: { page: EventPage; of: TeamEstimate; what: Quantity; children: ReactNode }) {
  const [open, setOpen] = useState(false)
  const { children, ...rest } = props
  const texts = words().explain
  return (
    <>
      <button type="button" className="opens" onClick={() => setOpen(true)} title={texts.opened}>
        {children}
        <span className="visually-hidden"> – {texts.openedShort}</span>
      </button>
      {open && createPortal(<MadePanel {...rest} onClose={() => setOpen(false)} />, document.body)}
    </>
  )
}
