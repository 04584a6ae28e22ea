import { refusal } from '../../documents/sentences.ts'
import { clear, playTeleop } from './events.ts'
import { eventsBytes } from './eventsBytes.ts'
import { fixedReals } from './layout.ts'
import { bind, drawWords, type Host, type Views } from './memory.ts'

const realsPerPage = 65_536 / 8
/** One gigabyte: more is refused rather than asked of the machine. */
const mostReals = 2 ** 27

let compiled: WebAssembly.Module | null | undefined

/** Null where the engine lacks the instructions or the page's policy forbids compiling. */
function moduleOf(): WebAssembly.Module | null {
  if (compiled === undefined)
    try {
      compiled = new WebAssembly.Module(Uint8Array.from(atob(eventsBytes.replace(/\s/g, '')), (c) => c.charCodeAt(0)))
    } catch {
      compiled = null
    }
  return compiled
}

/** The memory that matches are played in, and the event loop over it. */
export class Arena {
  /** Renewed when the memory grows: read them again after every `take`. */
  views: Views
  /** Who made the memory ready for the matches that are played now. */
  owner: object | null = null
  private host: Host
  private readonly memory: WebAssembly.Memory | null
  private readonly loop: (match: number, tells: number) => void
  /** Makes everything ready for a match, but for what its owner writes. */
  readonly clear: (match: number) => void
  /** Random words from a place on, at least `count`: see words.ts. The seed lies in memory. */
  readonly drawWords: (place: number, count: number, name: number, leg: number, replicate: number) => void
  private used = fixedReals

  /** @param quick false for the plain form, which is the fallback */
  constructor(host: Host, quick = true) {
    this.host = host
    const module = quick ? moduleOf() : null
    this.memory = module && new WebAssembly.Memory({ initial: 64 })
    this.views = viewsOf(this.memory?.buffer ?? new ArrayBuffer(64 * 65_536))
    if (module && this.memory) {
      const asked: Host = {
        fillChoices: (...args) => this.host.fillChoices(...args),
        fillList: (...args) => this.host.fillList(...args),
        standAfter: (...args) => this.host.standAfter(...args),
        tell: (...args) => this.host.tell(...args),
      }
      const { exports } = new WebAssembly.Instance(module, { env: { memory: this.memory }, host: { ...asked } })
      this.loop = exports['playTeleop'] as Arena['loop']
      this.clear = exports['clear'] as Arena['clear']
      this.drawWords = exports['drawWords'] as Arena['drawWords']
    } else {
      this.loop = (match, tells) => {
        bind(this.views, this.host)
        playTeleop(match, tells)
      }
      this.clear = (match) => {
        bind(this.views, this.host)
        clear(match)
      }
      this.drawWords = (...asked) => {
        bind(this.views, this.host)
        drawWords(...asked)
      }
    }
  }

  /** Whom the event loop asks. */
  set asks(host: Host) {
    this.host = host
    if (!this.memory) bind(this.views, host)
  }

  play(match: number, tells: boolean): void {
    this.loop(match, tells ? 1 : 0)
  }

  /**
   * Place of so many real numbers, all 0.
   * @throws ModelError 'overBudget'
   */
  reals(count: number): number {
    const place = this.used
    this.used += count
    if (this.used > this.views.reals.length) this.grow(this.used)
    return place
  }

  /** Place of so many whole numbers. */
  wholes(count: number): number {
    return 2 * this.reals((count + 1) >> 1)
  }

  copiedReals(numbers: ArrayLike<number>): number {
    const place = this.reals(numbers.length)
    this.views.reals.set(numbers, place)
    return place
  }

  copiedWholes(numbers: ArrayLike<number>): number {
    const place = this.wholes(numbers.length)
    this.views.wholes.set(numbers, place)
    return place
  }

  /** Place of so many bytes. */
  bytes(count: number): number {
    return 8 * this.reals((count + 7) >> 3)
  }

  private grow(least: number): void {
    if (least > mostReals) throw refusal('overBudget', ['tooManyStates', { states: least, most: mostReals }])
    const length = Math.max(least, Math.min(mostReals, Math.ceil(1.5 * this.views.reals.length)))
    if (this.memory) {
      this.memory.grow(Math.ceil((length - this.views.reals.length) / realsPerPage))
      this.views = viewsOf(this.memory.buffer)
    } else {
      const wider = viewsOf(new ArrayBuffer(8 * length))
      wider.reals.set(this.views.reals)
      this.views = wider
      bind(wider, this.host)
    }
  }
}

const viewsOf = (buffer: ArrayBuffer): Views => ({
  reals: new Float64Array(buffer),
  wholes: new Int32Array(buffer),
  bytes: new Uint8Array(buffer),
  words: new Uint32Array(buffer),
})
