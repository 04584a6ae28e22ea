const space = /[ \t\n\r]*/y
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not stand in a text of JSON
const text = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y
const plain = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y

/** Reads over JSON by its grammar (RFC 8259) and stops at the first place where it is none. */
class Reader {
  at = 0
  constructor(readonly source: string) {}

  private take(pattern: RegExp): boolean {
    pattern.lastIndex = this.at
    if (!pattern.test(this.source)) return false
    this.at = pattern.lastIndex
    return true
  }

  private sign(sign: string): boolean {
    this.take(space)
    if (this.source[this.at] !== sign) return false
    this.at++
    return true
  }

  value(): boolean {
    this.take(space)
    if (this.sign('{')) return this.list('}', () => this.entry())
    if (this.sign('[')) return this.list(']', () => this.value())
    return this.take(text) || this.take(plain)
  }

  private entry(): boolean {
    this.take(space)
    return this.take(text) && this.sign(':') && this.value()
  }

  private list(end: string, one: () => boolean): boolean {
    if (this.sign(end)) return true
    do if (!one()) return false
    while (this.sign(','))
    return this.sign(end)
  }

  end(): boolean {
    this.take(space)
    return this.at === this.source.length
  }
}

/** Where a text stops being JSON: line and column, from 1. Null where it is JSON. Browsers do not agree on saying it. */
export function faultIn(source: string): { line: number; column: number } | null {
  const reader = new Reader(source)
  if (reader.value() && reader.end()) return null
  const before = source.slice(0, reader.at).split('\n')
  return { line: before.length, column: before.at(-1)!.length + 1 }
}

/** 'goals › 2 › award › teleop', with entries of lists counted from 1. */
export const pathWords = (path: readonly (string | number)[], whole: string): string =>
  path.length === 0 ? whole : path.map((part) => (typeof part === 'number' ? String(part + 1) : part)).join(' › ')
