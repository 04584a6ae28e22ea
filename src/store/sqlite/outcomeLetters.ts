import type { Outcome } from '../records/types.ts'

const letters: { readonly [letter: string]: Outcome } = {
  f: { outcome: 'held', again: false },
  a: { outcome: 'held', again: true },
  o: { outcome: 'apart', reason: 'otherContent' },
  u: { outcome: 'apart', reason: 'unknownEvent' },
  m: { outcome: 'missing' },
}

function letterOf(of: Outcome): string {
  if (of.outcome === 'held') return of.again ? 'a' : 'f'
  if (of.outcome === 'missing') return 'm'
  return of.reason === 'otherContent' ? 'o' : 'u'
}

/** What became of rows, a letter each. */
export const lettersOf = (outcomes: readonly Outcome[]): string => outcomes.map(letterOf).join('')

export const outcomesIn = (text: string): Outcome[] => Array.from(text, (letter) => letters[letter]!)
