import { useSyncExternalStore } from 'react'
import { keptChoice } from '../data/kept.ts'

export type SchemeChoice = 'system' | 'light' | 'dark'
export type ContrastChoice = 'system' | 'usual' | 'more'

const scheme = keptChoice<SchemeChoice>('cyclewright/scheme', ['system', 'light', 'dark'])
const contrast = keptChoice<ContrastChoice>('cyclewright/contrast', ['system', 'usual', 'more'])

export const schemeChoice = scheme
export const contrastChoice = contrast

const dark = '(prefers-color-scheme: dark)'
const more = '(prefers-contrast: more)'

const asked = (query: string): boolean => matchMedia(query).matches

/** What is shown: the choice of this device, or what its system asks for. */
export const schemeShown = (): 'light' | 'dark' => {
  const chosen = scheme.now()
  return chosen === 'system' ? (asked(dark) ? 'dark' : 'light') : chosen
}

const contrastShown = (): 'usual' | 'more' => {
  const chosen = contrast.now()
  return chosen === 'system' ? (asked(more) ? 'more' : 'usual') : chosen
}

function follow(listener: () => void): () => void {
  const queries = [dark, more].map((query) => matchMedia(query))
  for (const query of queries) query.addEventListener('change', listener)
  const ends = [scheme.subscribe(listener), contrast.subscribe(listener)]
  return () => {
    for (const query of queries) query.removeEventListener('change', listener)
    for (const end of ends) end()
  }
}

/** Marks the page with what is shown, for base.css, now and after every change. */
export function followTheme(): void {
  const mark = () => {
    document.documentElement.dataset['scheme'] = schemeShown()
    document.documentElement.dataset['contrast'] = contrastShown()
  }
  mark()
  follow(mark)
}

/** The colour scheme shown, in a component that is drawn anew when it changes. */
export const useSchemeShown = (): 'light' | 'dark' => useSyncExternalStore(follow, schemeShown, () => 'light')
