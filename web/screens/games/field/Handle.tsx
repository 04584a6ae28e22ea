import { type ReactNode, useRef } from 'react'
import type { Point } from '../../../../src/model/documents/types.ts'
import { pressed } from '../../../shell/shortcuts.ts'
import { words } from '../../../words/catalogue.ts'

export interface HandleActions {
  onSelect(): void
  /** By so many metres from where the drag began. */
  onDrag(by: Point): void
  onDrop(): void
  onCancel(): void
  /** A step by the arrow keys: how many to each side. */
  onStep(steps: Point): void
  /** The keys went still. */
  onStill(): void
  onRemove?(): void
}

const arrows: { readonly [key: string]: Point } = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}

/** Pixels below which a press is no drag. */
const still = 3

/**
 * Something that is moved over the field: by mouse, finger or pen, or by the arrow keys. A slider of two dimensions, which
 * reads its place aloud.
 */
export function Handle(props: {
  name: string
  value: string
  at: Point
  /** The field's length: the largest value along it. */
  most: number
  /** Metres of one pixel on the screen, whatever the picture was scaled to. */
  metresPerPixel(): number
  /** A finger on it moves it; else it scrolls the page. */
  touch: boolean
  readOnly: boolean
  troubled: boolean
  handleKey: string
  actions: HandleActions
  children: ReactNode
}) {
  const { actions } = props
  const press = useRef<{ id: number; x: number; y: number; dragging: boolean } | null>(null)
  return (
    <g
      role="slider"
      tabIndex={0}
      aria-label={props.name}
      aria-roledescription={words().field.movable}
      aria-valuemin={0}
      aria-valuemax={props.most}
      aria-valuenow={props.at[0]}
      aria-valuetext={props.value}
      aria-readonly={props.readOnly || undefined}
      aria-invalid={props.troubled || undefined}
      data-handle={props.handleKey}
      className="field-handle"
      data-finger={props.touch && !props.readOnly ? 'moves' : undefined}
      style={{ cursor: props.readOnly ? 'default' : 'grab' }}
      onFocus={actions.onSelect}
      onBlur={actions.onStill}
      onPointerDown={(event) => {
        if (event.button !== 0) return
        event.currentTarget.focus({ preventScroll: true })
        actions.onSelect()
        if (props.readOnly || (event.pointerType === 'touch' && !props.touch)) return
        event.currentTarget.setPointerCapture(event.pointerId)
        press.current = { id: event.pointerId, x: event.clientX, y: event.clientY, dragging: false }
      }}
      onPointerMove={(event) => {
        const begun = press.current
        if (begun?.id !== event.pointerId) return
        const [dx, dy] = [event.clientX - begun.x, event.clientY - begun.y]
        begun.dragging ||= Math.hypot(dx, dy) > still
        const rate = props.metresPerPixel()
        if (begun.dragging) actions.onDrag([dx * rate, -dy * rate])
      }}
      onPointerUp={() => {
        if (press.current?.dragging) actions.onDrop()
        press.current = null
      }}
      onPointerCancel={() => {
        if (press.current?.dragging) actions.onCancel()
        press.current = null
      }}
      onKeyDown={(event) => {
        if (pressed(event, 'cancelDrag') && press.current?.dragging) {
          press.current = null
          actions.onCancel()
        }
        if (props.readOnly) return
        const which = pressed(event, 'move', 'moveFar', 'remove')
        const arrow = arrows[event.key]
        if (arrow && which !== null) {
          event.preventDefault()
          const times = which === 'moveFar' ? 5 : 1
          actions.onStep([arrow[0] * times, arrow[1] * times])
        } else if (which === 'remove') {
          event.preventDefault()
          actions.onRemove?.()
        }
      }}
    >
      {props.children}
    </g>
  )
}
