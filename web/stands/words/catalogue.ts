import { useSyncExternalStore } from 'react'
import { keptChoice } from '../../data/kept.ts'
import { de } from './de.ts'
import { en } from './en.ts'

export type Words = typeof en

const languages: { readonly [language: string]: { words: Words; locale: string } } = {
  en: { words: en, locale: 'en-GB' },
  de: { words: de, locale: 'de-DE' },
}

/** The same choice as on the other screens. */
export const languageChoice = keptChoice<'browser' | 'en' | 'de'>('cyclewright/language', ['browser', 'en', 'de'])

/** What is spoken: the choice, or the first of the browser's languages that is here. */
export function language(): string {
  const chosen = languageChoice.now()
  if (chosen !== 'browser') return chosen
  const wished = navigator.languages.map((wish) => wish.toLowerCase().split('-')[0]!)
  return wished.find((name) => Object.hasOwn(languages, name)) ?? 'en'
}

export const words = (): Words => languages[language()]!.words

/** The texts, in a component that is drawn anew when another language is chosen. */
export function useWords(): Words {
  useSyncExternalStore(languageChoice.subscribe, language)
  return words()
}

/** '14:03', and the day before it where it is not today. */
export function moment(ms: number, now = Date.now()): string {
  const date = new Date(ms)
  const { locale } = languages[language()]!
  const time: Intl.DateTimeFormatOptions = { hour: '2-digit', minute: '2-digit' }
  const today = new Date(now).toDateString() === date.toDateString()
  return date.toLocaleString(locale, today ? time : { ...time, day: 'numeric', month: 'short' })
}

/** When a match is to be, by the event's own clock as it was written, wherever the phone thinks it is; the day where it is not today there. */
export function matchTime(time: string, now = Date.now()): string {
  const offset = /([+-])(\d{2}):(\d{2})$/.exec(time)
  const minutes = offset ? Number(`${offset[1]}1`) * (60 * Number(offset[2]) + Number(offset[3])) : 0
  const there = (ms: number) => new Date(ms + minutes * 60_000)
  const [date, today] = [there(Date.parse(time)), there(now)]
  const same = date.toISOString().slice(0, 10) === today.toISOString().slice(0, 10)
  const clock: Intl.DateTimeFormatOptions = { hour: '2-digit', minute: '2-digit', timeZone: 'UTC' }
  return date.toLocaleString(languages[language()]!.locale, same ? clock : { ...clock, day: 'numeric', month: 'short' })
}

/** A number with at most this many digits after the decimal sign. */
export const number = (value: number, digits: number): string =>
  value.toLocaleString(languages[language()]!.locale, { maximumFractionDigits: digits, minimumFractionDigits: digits })
