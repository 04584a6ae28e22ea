import { en } from './en/index.ts'

/** Every text of the screens: plain strings, and functions where a text holds numbers or names. English is the pattern. */
export type Words = typeof en

/** Languages in which every screen is complete: their own name, the form in which Intl knows their habits, and how their catalogue is loaded. */
const languages = {
  en: { name: 'English', locale: 'en-GB', load: async (): Promise<Words> => en },
  // Loaded only by those who read it.
  de: { name: 'Deutsch', locale: 'de-DE', load: (): Promise<Words> => import('./de/index.ts').then(({ de }) => de) },
} as const

export type Language = keyof typeof languages

export const languageNames: readonly { language: Language; name: string }[] = (
  Object.keys(languages) as Language[]
).map((language) => ({ language, name: languages[language].name }))

let spoken: Words = en
let language: Language = 'en'
const listeners = new Set<() => void>()

/** The texts in the reader's language. Whoever keeps one for later keeps its language too. */
export const words = (): Words => spoken

/** The language of the texts, as in BCP 47: what the page's `lang` is told. */
export const languageSpoken = (): Language => language

/** What Intl is told: the language with the habits of one country. */
export const locale = (): string => languages[language].locale

/** Calls when the language changes. */
export function onLanguage(listener: () => void): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

/**
 * Takes the first language wished for that is complete, English otherwise. `wished` is what a person chose, or what the
 * browser says. A catalogue that can not be loaded leaves the language as it was.
 */
export async function chooseLanguage(wished: readonly string[]): Promise<void> {
  const names = wished.map((wish) => wish.toLowerCase().split('-')[0] as string)
  const next = names.find((name): name is Language => Object.hasOwn(languages, name)) ?? 'en'
  try {
    spoken = await languages[next].load()
    language = next
  } catch {
    return
  }
  for (const listener of listeners) listener()
}
