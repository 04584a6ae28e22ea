import { createContext, useContext } from 'react'
import type { Problem } from '../../../src/model/errors.ts'
import type { Place } from '../../data/difference.ts'
import { problemWords } from '../../words/problems.ts'

/** What the fields of a form share: the document, how to change it, what is wrong with it, and what can not be read yet. */
export interface Edit {
  document: unknown
  set(place: Place, value: unknown, group?: string | null): void
  pause(): void
  problems: readonly Problem[]
  /** Text that is not a value yet, by place; kept while other parts of the form are shown. */
  texts: { readonly [place: string]: string }
  setText(place: Place, text: string | null, error: string | null): void
  readOnly: boolean
  /** The language of a text of the document as BCP 47, where it is known. */
  language?(text: string): string | undefined
}

const Context = createContext<Edit | null>(null)

export const EditProvider = Context.Provider

export function useEdit(): Edit {
  const edit = useContext(Context)
  if (!edit) throw new Error('a field stands outside of its form')
  return edit
}

export const placeKey = (place: Place): string => place.join('/')

/** Forgets what was typed below a place and is no value: the place is gone, or its members have moved. */
export function forgetTexts(edit: Edit, place: Place): void {
  for (const key of Object.keys(edit.texts))
    if (key.startsWith(`${placeKey(place)}/`)) edit.setText(key.split('/'), null, null)
}

/** The sentence of the first problem at this place. */
export function problemAt(problems: readonly Problem[], place: Place): string | null {
  const key = placeKey(place)
  const found = problems.find((problem) => placeKey(problem.path) === key)
  return found ? problemWords(found) : null
}
