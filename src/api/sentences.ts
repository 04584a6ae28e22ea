import { storedSentences } from '../model/documents/refusals.ts'
import { shapeSentences } from '../model/documents/shapes.ts'
import type { Path, Problem } from '../model/errors.ts'
import type { AnySaid } from '../model/said.ts'
import { peopleSentences } from '../model/scouting/people.ts'

/** What the API says besides the model’s own sentences; the screens know the same tables. */
const sentences = { ...shapeSentences, ...storedSentences, ...peopleSentences }

type Sentences = typeof sentences

/** A sentence of the API by its name, with its parts. */
export type ApiSaid = {
  [Code in keyof Sentences]: { code: Code; parts: Parameters<Sentences[Code]>[0] }
}[keyof Sentences]

/** A sentence in English, with its name and parts. */
export function say(said: ApiSaid): { message: string; said: AnySaid } {
  const sentence = sentences[said.code] as (of: object) => string
  return { message: sentence(said.parts), said }
}

/** A problem that says one of these sentences. */
export const found = (path: Path, said: ApiSaid): Problem => ({ path, ...say(said) })
