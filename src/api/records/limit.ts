import { ApiError } from '../errors.ts'

/** Batches of one device in a minute: a phone sends one every few seconds at most, and 200 rows with each. */
export const mostBatches = 240

/** Devices that are remembered; whoever makes up names for themselves does not fill the memory. */
const mostDevices = 20_000
const minute = 60_000

/** By device and not by address, because a whole stand shares one. Nothing is lost: the phone keeps its rows and comes back. */
export class DeviceLimit {
  readonly #most: number
  #since = 0
  #counts = new Map<string, number>()

  constructor(most = mostBatches) {
    this.#most = most
  }

  /** Counts one more. Throws when it is too much. @param now ms */
  count(device: string, now: number): void {
    if (now - this.#since >= minute || this.#counts.size >= mostDevices) {
      this.#since = now
      this.#counts = new Map()
    }
    const count = (this.#counts.get(device) ?? 0) + 1
    this.#counts.set(device, count)
    if (count <= this.#most) return
    throw new ApiError({
      code: 'tooMany',
      message:
        'This device sends more often than anybody needs. What it holds is kept there; it may come back in a minute',
      retryAfter: Math.max(1, Math.ceil((this.#since + minute - now) / 1000)),
    })
  }
}
