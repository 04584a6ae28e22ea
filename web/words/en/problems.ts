import { sentences } from '../../../src/model/documents/sentences.ts'
import type { Inner } from '../../../src/model/said.ts'
import { computing } from './computing.ts'
import { ofEvents } from './eventSentences.ts'
import { ofExchange } from './exchangeSentences.ts'
import { ofPeople } from './peopleRefusals.ts'
import { shapes, stored } from './shapes.ts'

const all = { ...sentences, ...shapes, ...stored, ...ofPeople, ...ofEvents, ...ofExchange }

type All = typeof all

/** A part with its numbers written for the reader, and with the sentence that it may hold. */
type Shown<Part> = Part extends number
  ? string
  : Part extends readonly number[]
    ? readonly string[]
    : Part extends Inner
      ? string
      : Part

export type Told<Parts> = { [Part in keyof Parts]: Shown<Parts[Part]> }

/** What the model and the API say of documents and requests, each as a text: measured numbers come with their unit. */
export type ProblemTexts = { [Code in keyof All]: (of: Told<Parameters<All[Code]>[0]>) => string }

const standing = (what: { start: string } | { spot: string; of: string }): string =>
  'start' in what ? `start “${what.start}”` : `spot “${what.spot}” of “${what.of}”`

export const problems: ProblemTexts = {
  // In English they are the program's own: a template writes what it is given.
  ...(all as unknown as ProblemTexts),
  outside: ({ what, at, length, width }) =>
    `The ${standing(what)} lies outside the field of ${length} × ${width}, at ${at.join(' along and ')} across`,
  ...computing,
}
