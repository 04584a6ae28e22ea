import { expect } from 'vitest'
import type { Path, Problem } from '../../../src/model/errors.ts'

/** A change to a document, the one field that must be named, and words that the sentence must hold. */
export type Case<Document> = [what: string, change: (document: Document) => void, path: Path, words: RegExp]

/** That exactly this field is named, so that nothing else is blamed with it. */
export function expectOne(problems: readonly Problem[], path: Path, words: RegExp): void {
  expect(problems.map((problem) => problem.path.join('/'))).toEqual([path.join('/')])
  expect(problems[0]!.message).toMatch(words)
}
