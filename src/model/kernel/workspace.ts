import { kernelBytes } from './kernelBytes.ts'
import { type Kernel, plainKernel } from './plain.ts'

const numbersPerPage = 65_536 / 8

/** Numbers that an idle workspace may keep (32 MB); a larger one is left to the collector. */
const mostKept = 4_000_000

let compiled: WebAssembly.Module | null | undefined

/** Null where the engine lacks the instructions or the page's policy forbids compiling. */
function moduleOf(): WebAssembly.Module | null {
  if (compiled === undefined)
    try {
      compiled = new WebAssembly.Module(Uint8Array.from(atob(kernelBytes.replace(/\s/g, '')), (c) => c.charCodeAt(0)))
    } catch {
      compiled = null
    }
  return compiled
}

const idle: Workspace[] = []

/**
 * One stretch of numbers in which a calculation keeps what its inner loops work on, and those loops. Borrow one, `take`
 * places from it, give it back: the next borrower gets the same memory.
 * @example
 * const space = Workspace.borrowed()
 * const row = space.take(100)
 * space.data[row] = 1
 * space.giveBack()
 */
export class Workspace {
  /** Renewed by `take` when the memory grows; read it again afterwards. */
  data: Float64Array
  /** The same memory as whole numbers of 4 bytes: place p of `data` is place 2 · p here. */
  whole: Int32Array
  /** As whole numbers of 2 bytes: place p of `data` is place 4 · p here. */
  short: Int16Array
  kernel: Kernel
  private readonly memory: WebAssembly.Memory | null
  private used = 0

  /** @param quick false for the plain loops, which are the fallback */
  constructor(quick = true) {
    const module = quick ? moduleOf() : null
    const memory = module && new WebAssembly.Memory({ initial: 16 })
    const buffer = memory?.buffer ?? new ArrayBuffer(16 * 65_536)
    this.memory = memory
    this.data = new Float64Array(buffer)
    this.whole = new Int32Array(buffer)
    this.short = new Int16Array(buffer)
    this.kernel =
      module && memory
        ? (new WebAssembly.Instance(module, { workspace: { memory } }).exports as unknown as Kernel)
        : plainKernel(this.data, this.whole, this.short)
  }

  static borrowed(): Workspace {
    return idle.pop() ?? new Workspace()
  }

  giveBack(): void {
    this.used = 0
    if (this.data.length <= mostKept && idle.length < 4) idle.push(this)
  }

  /** Place of `length` numbers that nobody else uses, all zero. */
  take(length: number): number {
    const place = this.used
    this.used += length + (length & 1)
    // Eight numbers to spare: loops may read and write that far beyond an end.
    if (this.used + 8 > this.data.length) this.grow(this.used + 8)
    this.data.fill(0, place, this.used)
    return place
  }

  /** Place of a copy. */
  copied(numbers: Float64Array): number {
    const place = this.take(numbers.length)
    this.data.set(numbers, place)
    return place
  }

  /** Place in `whole` of a copy. */
  copiedWhole(numbers: Int32Array): number {
    const place = 2 * this.take((numbers.length + 1) >> 1)
    this.whole.set(numbers, place)
    return place
  }

  /** @throws RangeError where the engine has no more memory */
  private grow(least: number): void {
    const length = Math.ceil(Math.max(least, Math.min(1.5 * this.data.length, this.data.length + mostKept)))
    if (this.memory) {
      this.memory.grow(Math.ceil((length - this.data.length) / numbersPerPage))
      this.data = new Float64Array(this.memory.buffer)
      this.whole = new Int32Array(this.memory.buffer)
      this.short = new Int16Array(this.memory.buffer)
      return
    }
    const data = new Float64Array(length)
    data.set(this.data)
    this.data = data
    this.whole = new Int32Array(data.buffer)
    this.short = new Int16Array(data.buffer)
    this.kernel = plainKernel(this.data, this.whole, this.short)
  }
}
