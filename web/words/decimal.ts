import { languageSpoken } from './catalogue.ts'

/** A number with so many decimals, as the reader's language writes it: '1.25', '1,25'. */
export const decimal = (value: number, digits: number): string =>
  new Intl.NumberFormat(languageSpoken(), {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
    useGrouping: false,
  }).format(value)

/** A list in words, as the reader's language joins it: 'a, b and c', 'a, b und c'. */
export const joined = (items: readonly string[]): string =>
  new Intl.ListFormat(languageSpoken() === 'en' ? 'en-GB' : languageSpoken(), { type: 'conjunction' }).format(items)
