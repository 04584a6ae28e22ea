/** A sentence’s name and parts, loosely: what is carried about. `documents/sentences.ts` has the tables and their types. */
export interface AnySaid {
  readonly code: string
  readonly parts: object
}

/** A sentence within a sentence, with its text in English. */
export interface Inner extends AnySaid {
  readonly text: string
}

/** The text of a sentence within a sentence, or the one that already stands there in a reader’s language. */
export const innerText = (inner: Inner | string): string => (typeof inner === 'string' ? inner : inner.text)
