/** From a key press to new points on the screen, in the browser's own performance timeline. */
export const measureName = 'edit-to-points'

let pressedAt: number | null = null

/** Called while the event of an edit is handled: the time is that of the press itself. */
export function noteEdit(event: { timeStamp: number } | undefined = globalThis.event): void {
  pressedAt ??= event?.timeStamp ?? performance.now()
}

/** The press whose edit is now sent to the model. */
export function takePress(): number | null {
  const start = pressedAt
  pressedAt = null
  return start
}

/** Called when the points of that edit are committed: measured up to the frame that paints them. */
export function notePoints(start: number | null): void {
  if (start === null) return
  requestAnimationFrame(() => {
    performance.measure(measureName, { start, end: performance.now() })
  })
}
