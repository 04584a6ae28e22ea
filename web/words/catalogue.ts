import { first } from './en/first.ts'
import type { en } from './en/index.ts'

/** Every text of the screens: plain strings, and functions where a text holds numbers or names. English is the pattern. */
export type Words = typeof en

/** The areas of it that the first page needs. */
export type FirstWords = typeof first

/** Languages in which every screen is complete: their own name, the form in which Intl knows their habits, their texts. */
const languages = {
  en: {
    name: 'English',
    locale: 'en-GB',
    first: async (): Promise<FirstWords> => first,
    all: (): Promise<Words> => import('./en/index.ts').then(({ en }) => en),
  },
  de: {
    name: 'Deutsch',
    locale: 'de-DE',
    first: (): Promise<FirstWords> => import('./de/first.ts').then(({ first }) => first),
    all: (): Promise<Words> => import('./de/index.ts').then(({ de }) => de),
  },
} as const

export type Language = keyof typeof languages

export const languageNames: readonly { language: Language; name: string }[] = (
  Object.keys(languages) as Language[]
).map((language) => ({ language, name: languages[language].name }))

let spoken: FirstWords = first
let language: Language = 'en'
let wanted: 'first' | 'all' = 'first'
const listeners = new Set<() => void>()

/**
 * The texts in the reader's language. Until a screen other than the first has waited for `allWords`, only the areas of the
 * first page are there, which tests/house watches: a type that said so would have to be asked in each of a hundred places.
 */
export const words = (): Words => spoken as Words

/** The language of the texts, as in BCP 47: what the page's `lang` is told. */
export const languageSpoken = (): Language => language

/** What Intl is told: the language with the habits of one country. */
export const locale = (): string => languages[language].locale

/** Calls when the language changes. */
export function onLanguage(listener: () => void): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

async function speak(next: Language): Promise<void> {
  spoken = await languages[next][wanted]()
  language = next
}

/**
 * Takes the first language wished for that is complete, English otherwise. `wished` is what a person chose, or what the
 * browser says. Texts that can not be loaded leave the language as it was.
 */
export async function chooseLanguage(wished: readonly string[]): Promise<void> {
  const names = wished.map((wish) => wish.toLowerCase().split('-')[0] as string)
  const next = names.find((name): name is Language => Object.hasOwn(languages, name)) ?? 'en'
  try {
    await speak(next)
  } catch {
    return
  }
  for (const listener of listeners) listener()
}

/** Loads the texts of all screens, now and for every language chosen later. */
export async function allWords(): Promise<void> {
  wanted = 'all'
  await speak(language)
}
