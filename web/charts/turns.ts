const waiting = new Set<() => void>()
let asked = false

/** A window that nobody looks at draws no frames, and still goes on (ms). */
const longest = 250

/** One after the other, each after a whole frame: what is on the screen by then can be read and pressed meanwhile. */
function next(): void {
  asked = true
  const go = () => {
    if (!asked) return
    asked = false
    clearTimeout(timer)
    cancelAnimationFrame(frame)
    const [first] = waiting
    if (first) waiting.delete(first)
    first?.()
    if (waiting.size > 0 && !asked) next()
  }
  const timer = setTimeout(go, longest)
  let frame = requestAnimationFrame(() => {
    frame = requestAnimationFrame(go)
  })
}

/** Goes on once what was drawn last is on the screen, in its turn; returns how to leave that. */
export function inTurn(go: () => void): () => void {
  waiting.add(go)
  if (!asked) next()
  return () => void waiting.delete(go)
}

/** Until what was drawn last is on the screen: further computing would take the processor from it. */
export const afterDrawing = (): Promise<void> => new Promise((resolve) => void inTurn(resolve))

/** For what nobody waits for: once the page has nothing to draw, after three seconds in any case. */
export const whenIdle = (): Promise<void> =>
  new Promise((resolve) => {
    // Not every browser has it.
    if ('requestIdleCallback' in globalThis) requestIdleCallback(() => resolve(), { timeout: 3000 })
    else setTimeout(resolve, 1000)
  })
