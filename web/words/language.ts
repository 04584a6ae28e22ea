import { useSyncExternalStore } from 'react'
import { keptChoice } from '../data/kept.ts'
import { chooseLanguage, type Language, languageSpoken, onLanguage } from './catalogue.ts'

const kept = keptChoice<'browser' | Language>('cyclewright/language', ['browser', 'en', 'de'])

/** What this device's person chose; `browser` follows the browser's own languages. */
export const useLanguageChoice = () => kept.use()

export const chooseLanguageHere = (next: 'browser' | Language): void => kept.choose(next)

/** The language of the texts, in a component that is drawn anew when it changes. */
export const useLanguage = (): Language => useSyncExternalStore(onLanguage, languageSpoken, () => 'en')

async function speak(): Promise<void> {
  const choice = kept.now()
  await chooseLanguage(choice === 'browser' ? navigator.languages : [choice])
  document.documentElement.lang = languageSpoken()
}

/** Speaks the language chosen, and follows another choice here, in another tab, or in the browser's settings. */
export function followLanguage(): Promise<void> {
  kept.subscribe(() => void speak())
  addEventListener('languagechange', () => void speak())
  return speak()
}
