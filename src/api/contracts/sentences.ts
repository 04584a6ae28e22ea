import * as z from 'zod'
import { type Comparison, type FieldName, type Got, gotOf, gotText, type Noun } from '../../model/documents/shapes.ts'
import type { Path, Problem } from '../../model/errors.ts'
import { type ApiSaid, say } from '../sentences.ts'

type RawIssue = z.core.$ZodRawIssue
type Issue = z.core.$ZodIssue

/** The field's own name as a person would point at it: `success`, or `at[0]` for an entry of a list. */
export function nameIn(path: readonly PropertyKey[] | undefined): FieldName {
  const last = (path ?? []).findLastIndex((part) => typeof part === 'string')
  if (!path || last < 0) return null
  const entries = path.slice(last + 1).map((index) => `[${String(index)}]`)
  return String(path[last]) + entries.join('')
}

/** The value as it was given, shortened so that a sentence stays a sentence. */
export const echo = (value: unknown): string => gotText(gotOf(value))

const nouns: { [type: string]: Noun } = {
  number: 'a number',
  int: 'a whole number',
  string: 'text',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list',
  object: 'an object',
  record: 'an object',
  null: 'null',
}

/** What an issue is about: as zod hands it to a sentence, or as it stands in an error that kept its inputs. */
type Found = { code?: string | undefined; path?: PropertyKey[] | undefined; input?: unknown; [field: string]: unknown }

function wrongType(name: FieldName, expected: string, input: unknown): ApiSaid {
  if (input === undefined) return { code: 'missing', parts: { name } }
  if (typeof input === 'number' && !Number.isFinite(input)) {
    return { code: 'infinite', parts: { name, got: String(input) } }
  }
  return { code: 'wrongType', parts: { name, noun: nouns[expected] ?? (expected as Noun), got: gotOf(input) } }
}

function wrongSize(name: FieldName, issue: Found): ApiSaid {
  const least = issue.code === 'too_small'
  const bound = Number(least ? issue['minimum'] : issue['maximum'])
  const comparison: Comparison =
    issue['inclusive'] === false ? (least ? 'more than' : 'less than') : least ? 'at least' : 'at most'
  const { input } = issue
  if (Array.isArray(input)) {
    return { code: 'entries', parts: { name, comparison, entries: bound, got: input.length } }
  }
  if (typeof input === 'string') {
    if (input === '') return { code: 'emptyText', parts: { name } }
    return { code: 'characters', parts: { name, comparison, characters: bound, got: input.length } }
  }
  if (typeof input === 'object' && input !== null) {
    return { code: 'entries', parts: { name, comparison, entries: bound, got: Object.keys(input).length } }
  }
  return { code: 'outOfRange', parts: { name, comparison, bound, got: gotOf(input) } }
}

/** Patterns that have a sentence of their own, by how zod repeats them in an issue. */
const patterns = new Map<string, (got: Got) => ApiSaid>()

/** Text of a pattern, with the sentence for what is not written so. Two sentences need two patterns. */
export function written(pattern: RegExp, make: (got: Got) => ApiSaid) {
  patterns.set(String(pattern), make)
  return z.string().regex(pattern)
}

function noneOf(name: FieldName, allowed: unknown, input: unknown): ApiSaid {
  if (input === undefined) return { code: 'missing', parts: { name } }
  return { code: 'noneOf', parts: { name, allowed: (allowed as unknown[]).map(echo), got: gotOf(input) } }
}

/** The sentence of an issue by its name, with its parts. */
function saidOf(issue: Found): ApiSaid | undefined {
  const name = nameIn(issue.path)
  const got = gotOf(issue.input)
  switch (issue.code) {
    case 'invalid_type':
      return wrongType(name, String(issue['expected']), issue.input)
    case 'too_small':
    case 'too_big':
      return wrongSize(name, issue)
    case 'unrecognized_keys':
      return { code: 'unknownFields', parts: { keys: issue['keys'] as string[] } }
    case 'invalid_value':
      if (name === 'format' && issue.input !== undefined) return { code: 'otherFormat', parts: { got } }
      return noneOf(name, issue['values'], issue.input)
    case 'invalid_union': {
      if (issue['options'] === undefined) return { code: 'noForm', parts: { name, got } }
      const of = issue.input as { [key: string]: unknown } | null | undefined
      return noneOf(name, issue['options'], of?.[String(issue['discriminator'])])
    }
    case 'invalid_key':
      return { code: 'notAnId', parts: { got } }
    case 'invalid_format':
      return patterns.get(String(issue['pattern']))?.(got) ?? { code: 'otherwiseWritten', parts: { name, got } }
    case 'not_multiple_of':
      return { code: 'notMultiple', parts: { name, divisor: Number(issue['divisor']), got } }
    default:
      return undefined
  }
}

/** One sentence for the person who typed it: names the field, says what is allowed and repeats what was given. */
export function sentence(issue: RawIssue): string | undefined {
  const said = saidOf(issue)
  return said && say(said).message
}

/** For a rule of a contract’s own: its sentence, which keeps its name and parts. */
export function rule(make: (issue: { input?: unknown; path?: PropertyKey[] | undefined }) => ApiSaid) {
  return { error: (issue: RawIssue) => say(make(issue)).message, params: { make } }
}

/** The name and parts of an issue’s sentence: where the issue is the general one, or brings them along. */
function carried(issue: Issue): Pick<Problem, 'said'> {
  const { params } = issue as { params?: { said?: ApiSaid; make?: (issue: Issue) => ApiSaid } }
  const said =
    params?.said ?? params?.make?.(issue) ?? ('input' in issue ? saidOf(issue as unknown as Found) : undefined)
  return said && say(said).message === issue.message ? { said } : {}
}

// A browser that runs no code made at run time would note each attempt of it as a fault.
z.config({ customError: sentence, jitless: !('process' in globalThis) })

/**
 * Gives issues back the inputs that they were about, which an error of a plain `parse` does not keep: without them a
 * sentence has no name and parts to be said in another language.
 */
export function recall(issues: readonly Issue[], sent: unknown): void {
  for (const issue of issues) {
    const input = issue.path.reduce<unknown>(
      (part, key) => (part as { [key: PropertyKey]: unknown } | null)?.[key],
      sent,
    )
    Object.assign(issue, { input: issue.code === 'invalid_key' ? issue.path.at(-1) : input })
    if (issue.code === 'invalid_union') for (const branch of issue.errors) recall(branch, input)
  }
}

/** How far a branch of a union is from what was given: fields that it misses or does not know. */
function mismatch(branch: readonly Issue[]): number {
  return branch.reduce((sum, issue) => {
    if (issue.code === 'unrecognized_keys') return sum + (issue.path.length === 0 ? issue.keys.length : 0)
    return sum + (issue.path.length <= 1 && issue.code === 'invalid_type' ? 1 : 0)
  }, 0)
}

function flatten(issue: Issue, before: Path): Problem[] {
  const path = [...before, ...(issue.path as (string | number)[])]
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({ path: [...path, key], message: issue.message, ...carried(issue) }))
  }
  if (issue.code === 'invalid_union' && issue.errors.length > 0) {
    const fits = issue.errors.filter((branch) => !branch.some((each) => each.path.length === 0 && isTypeIssue(each)))
    const nearest = [...fits].sort((a, b) => mismatch(a) - mismatch(b))[0]
    if (nearest) return nearest.flatMap((each) => flatten(each, path))
  }
  return [{ path, message: issue.message, ...carried(issue) }]
}

function isTypeIssue(issue: Issue): boolean {
  return issue.code === 'invalid_type' || issue.code === 'invalid_value'
}

/** What a contract found, as problems with full paths; in a union, those of the form that was most likely meant. */
export function problemsOf(error: z.core.$ZodError, before: Path = []): Problem[] {
  return error.issues.flatMap((issue) => flatten(issue, before))
}
