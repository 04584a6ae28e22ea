import { codes as codesDe } from '../../words/de/codes.ts'
import { pit as pitDe } from '../../words/de/pit.ts'
import { codes } from '../../words/en/codes.ts'
import { pit } from '../../words/en/pit.ts'
import { language, useWords } from './catalogue.ts'

const all = { en: { codes, pit }, de: { codes: codesDe, pit: pitDe } }

/** Texts that the stands share with the other screens' catalogue. */
export function useMoreWords(): typeof all.en {
  // Drawn anew with the language, as the stands' own texts are.
  useWords()
  return language() === 'de' ? all.de : all.en
}
