import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { words } from '../../words/catalogue.ts'
import { day, moment } from '../../words/format.ts'

type Agreed = DecisionRecord['agreed']

/** When somebody agreed: a day, or a day with its time where it was kept. */
export const agreedWhen = (on: string): string => (on.includes('T') ? moment(on) : day(on))

/** The agreements with one more, or what is wrong with the name. `now`: ISO 8601. */
export function agreeing(agreed: Agreed, who: string, now: string): { agreed: Agreed } | { error: string } {
  const texts = words().decisions.agree
  const name = who.trim()
  if (name === '') return { error: texts.nameNeeded }
  const same = (other: string) => other.trim().toLocaleLowerCase() === name.toLocaleLowerCase()
  if (agreed.some((entry) => same(entry.who))) return { error: texts.already(name) }
  return { agreed: [...agreed, { who: name, on: `${now.slice(0, 16)}Z` }] }
}
