/**
 * A cache that keeps what the present and the last generation asked for: an edit finds everything that it did not
 * change, and two thousand draws of a belief leave nothing behind.
 */
export class GenerationCache<Value> {
  private present = new Map<string, Value>()
  private last = new Map<string, Value>()

  get(key: string, make: () => Value): Value {
    const found = this.present.get(key)
    if (found !== undefined) return found
    const value = this.last.get(key) ?? make()
    this.present.set(key, value)
    return value
  }

  /** Begin a generation; `atLeast` keeps small caches from turning over. */
  turn(atLeast = 0): void {
    if (this.present.size < atLeast) return
    this.last = this.present
    this.present = new Map()
  }
}
