import { crc32 } from './crc32.ts'
import { CodeError } from './failure.ts'
import { readFrame } from './frame.ts'
import { Solver } from './solver.ts'

/** Messages begun at once, and parts of one: what would be more is no message of ours. */
const [mostMessages, mostParts] = [12, 2000]

/** How far a message is: `parts` says which of its own parts are in, so that a picture of it can be drawn. */
export interface Collected {
  id: number
  /** Whether this frame said anything new. */
  fresh: boolean
  have: number
  needed: number
  parts: readonly boolean[]
  /** The message, with the frame that completed it. */
  message: Uint8Array | null
}

interface Begun {
  length: number
  width: number
  solver: Solver
}

/** Puts frames together in whatever order they come: also of several phones, and after a look elsewhere. */
export class Collector {
  private readonly begun = new Map<number, Begun>()
  private readonly done = new Map<number, number>()

  /** Takes the text of a code. */
  add(text: string): Collected {
    const frame = readFrame(text)
    if (frame.kind === 'still') return this.take(crc32(frame.message), frame.message, 1)
    const { id, length, data } = frame
    const needed = Math.ceil(length / data.length)
    if (needed > mostParts) throw new CodeError('damaged')
    if (this.done.has(id)) return { ...whole(id, needed), fresh: false, message: null }
    let begun = this.begun.get(id)
    if (begun && (begun.length !== length || begun.width !== data.length)) begun = undefined
    begun ??= { length, width: data.length, solver: new Solver(needed) }
    // Most recent last, so that the oldest can go.
    this.begun.delete(id)
    this.begun.set(id, begun)
    if (this.begun.size > mostMessages) this.begun.delete(this.begun.keys().next().value!)
    const fresh = begun.solver.add(frame)
    const { have, parts } = begun.solver
    if (have < needed) return { id, fresh, have, needed, parts, message: null }
    const message = begun.solver.solve().subarray(0, length)
    this.begun.delete(id)
    if (crc32(message) !== id) throw new CodeError('damaged')
    return this.take(id, message, needed)
  }

  private take(id: number, message: Uint8Array, needed: number): Collected {
    const fresh = !this.done.has(id)
    this.done.set(id, needed)
    return { ...whole(id, needed), fresh, message: fresh ? message : null }
  }
}

const whole = (id: number, needed: number) => ({
  id,
  have: needed,
  needed,
  parts: Array.from({ length: needed }, () => true),
})
