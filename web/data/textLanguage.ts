import { demoNote } from '../../src/model/documents/demo.ts'
import type { StoredDocument } from '../../src/store/types.ts'

/** Documents do not say their language. Known is that of the demo season as it was put in: English. */
export const languageOf = ({ note }: Pick<StoredDocument, 'note'>): 'en' | undefined =>
  note === demoNote ? 'en' : undefined

/** All texts within a document. */
function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsIn) : []
}

/** Tells the language of a text on a screen of this document: known where it stands in it as it was put in. */
export function languageOfTexts(stored: Pick<StoredDocument, 'note' | 'body'>): (text: string) => 'en' | undefined {
  const language = languageOf(stored)
  if (!language) return () => undefined
  const texts = new Set(textsIn(stored.body))
  return (text) => (texts.has(text) ? language : undefined)
}
