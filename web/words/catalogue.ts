import { en } from './en/index.ts'

/** Every text of the screens: plain strings, and functions where a text holds numbers or names. English is the pattern. */
export type Words = typeof en

/** Languages in which every screen is complete, and how their catalogue is fetched. German joins when the last screen's texts are here. */
const languages: Readonly<Record<string, () => Promise<Words>>> = {
  en: async () => en,
}

let spoken: Words = en
let language = 'en'

/** The texts in the reader's language. The language is chosen once, before the first screen is drawn. */
export const words = (): Words => spoken

/** The language of the texts, as in BCP 47: what Intl and the page's `lang` are told. */
export const languageSpoken = (): string => language

/** Takes the first language wished for that is complete, English otherwise. `wished` is what the browser says. */
export async function chooseLanguage(wished: readonly string[]): Promise<void> {
  const names = wished.map((wish) => wish.toLowerCase().split('-')[0] as string)
  language = names.find((name) => name in languages) ?? 'en'
  spoken = await (languages[language] as () => Promise<Words>)()
}
