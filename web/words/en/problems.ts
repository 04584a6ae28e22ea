import { type Sentences, sentences } from '../../../src/model/documents/sentences.ts'

/** The parts of a sentence with their numbers already written for the reader. */
type Told<Parts> = {
  [Part in keyof Parts]: Parts[Part] extends number
    ? string
    : Parts[Part] extends readonly number[]
      ? readonly string[]
      : Parts[Part]
}

/** What the model's checks say, each as a text: lengths come with their unit. */
export type ProblemTexts = { [Code in keyof Sentences]: (of: Told<Parameters<Sentences[Code]>[0]>) => string }

const standing = (what: { start: string } | { spot: string; of: string }): string =>
  'start' in what ? `start “${what.start}”` : `spot “${what.spot}” of “${what.of}”`

export const problems: ProblemTexts = {
  // In English they are the model's own: a template writes what it is given.
  ...(sentences as unknown as ProblemTexts),
  outside: ({ what, at, length, width }) =>
    `The ${standing(what)} lies outside the field of ${length} × ${width}, at ${at.join(' along and ')} across`,
}
