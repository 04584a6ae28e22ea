import type { Guess } from '../../src/model/sheet/index.ts'

const letters = 'abcdefghijklmnopqrstuvwxyz0123456789'
const name = 'cyclewright/device'

/** Made up at random: nobody guesses it. */
export function madeKey(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(24)), (byte) => letters[byte % letters.length]).join('')
}

let forNow: string | null = null

/** What this browser calls itself in rounds of guesses: made up once, kept, and shown to nobody. */
export function thisDevice(): string {
  try {
    const known = localStorage.getItem(name)
    if (known && /^[a-z0-9]{16,64}$/.test(known)) return known
    const fresh = madeKey()
    localStorage.setItem(name, fresh)
    return fresh
  } catch {
    // Without storage it is the same device only until the page is left.
    forNow ??= madeKey()
    return forNow
  }
}

const own = (code: string) => `cyclewright/guess/${code}`

/** What was guessed here before, so that it can be corrected after the page was closed. */
export function ownGuess(code: string): Guess | null {
  try {
    return JSON.parse(localStorage.getItem(own(code)) ?? 'null') as Guess | null
  } catch {
    return null
  }
}

export function keepOwnGuess(code: string, guess: Guess): void {
  try {
    localStorage.setItem(own(code), JSON.stringify(guess))
  } catch {
    // The server has it all the same.
  }
}

const closing = (code: string) => `cyclewright/closing/${code}`
const closingForNow = new Map<string, string>()

/** The key with which this browser can close a round; null: it was opened elsewhere. */
export function closingKey(code: string): string | null {
  try {
    return closingForNow.get(code) ?? localStorage.getItem(closing(code))
  } catch {
    return closingForNow.get(code) ?? null
  }
}

export function keepClosingKey(code: string, key: string): void {
  // Without storage the round can be closed as long as the page stays.
  closingForNow.set(code, key)
  try {
    localStorage.setItem(closing(code), key)
  } catch {
    // It is kept for now.
  }
}
