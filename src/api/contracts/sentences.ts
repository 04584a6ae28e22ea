import * as z from 'zod'
import type { Path, Problem } from '../../model/errors.ts'

type RawIssue = z.core.$ZodRawIssue
type Issue = z.core.$ZodIssue

/** The field's own name as a person would point at it: `success`, or `at[0]` for an entry of a list. */
export function fieldName(path: readonly PropertyKey[] | undefined): string {
  const last = (path ?? []).findLastIndex((part) => typeof part === 'string')
  if (!path || last < 0) return 'the document'
  const entries = path.slice(last + 1).map((index) => `[${String(index)}]`)
  return String(path[last]) + entries.join('')
}

/** The value as it was given, shortened so that a sentence stays a sentence. */
export function echo(value: unknown): string {
  if (typeof value === 'number') return String(value)
  if (Array.isArray(value)) return `a list of ${value.length}`
  if (typeof value === 'object' && value !== null) return 'an object'
  const text = JSON.stringify(value) ?? String(value)
  return text.length > 60 ? `${text.slice(0, 57)}…` : text
}

const nouns: { [type: string]: string } = {
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

function wrongType(name: string, expected: string, input: unknown): string {
  if (input === undefined) return `${name} is missing`
  if (typeof input === 'number' && !Number.isFinite(input)) return `${name} must be a finite number, got ${input}`
  return `${name} must be ${nouns[expected] ?? expected}, got ${echo(input)}`
}

function wrongSize(name: string, issue: RawIssue & { code: 'too_small' | 'too_big' }): string {
  const least = issue.code === 'too_small'
  const bound = String(least ? issue['minimum'] : issue['maximum'])
  const comparison = issue['inclusive'] === false ? (least ? 'more than' : 'less than') : least ? 'at least' : 'at most'
  const { input } = issue
  if (Array.isArray(input)) {
    return `${name} must have ${comparison} ${bound} ${bound === '1' ? 'entry' : 'entries'}, got ${input.length}`
  }
  if (typeof input === 'string') {
    if (input === '') return `${name} must not be empty`
    return `${name} must have ${comparison} ${bound} characters, got ${input.length}`
  }
  if (typeof input === 'object') return `${name} must have ${comparison} ${bound} entries`
  return `${name} must be ${comparison} ${bound}, got ${echo(input)}`
}

/** One sentence for the person who typed it: names the field, says what is allowed and repeats what was given. */
export function sentence(issue: RawIssue): string | undefined {
  const name = fieldName(issue.path)
  switch (issue.code) {
    case 'invalid_type':
      return wrongType(name, String(issue['expected']), issue.input)
    case 'too_small':
    case 'too_big':
      return wrongSize(name, issue as RawIssue & { code: 'too_small' | 'too_big' })
    case 'unrecognized_keys':
      return `${(issue['keys'] as string[]).map(echo).join(', ')} is not a field that is known here`
    case 'invalid_value':
      return issue.input === undefined
        ? `${name} is missing`
        : `${name} must be ${(issue['values'] as unknown[]).map(echo).join(' or ')}, got ${echo(issue.input)}`
    case 'invalid_union': {
      const options = issue['options'] as unknown[] | undefined
      if (options === undefined) return `${name} has none of the forms that are allowed here, got ${echo(issue.input)}`
      const given = (issue.input as { [key: string]: unknown } | null)?.[String(issue['discriminator'])]
      return given === undefined
        ? `${name} is missing`
        : `${name} must be ${options.map(echo).join(' or ')}, got ${echo(given)}`
    }
    case 'invalid_key':
      return `${echo(issue.input)} can not be used as an id here`
    case 'invalid_format':
      return `${name} is not written as expected, got ${echo(issue.input)}`
    case 'not_multiple_of':
      return `${name} must be a multiple of ${String(issue['divisor'])}, got ${echo(issue.input)}`
    default:
      return undefined
  }
}

// A browser that runs no code made at run time would note each attempt of it as a fault.
z.config({ customError: sentence, jitless: !('process' in globalThis) })

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
    return issue.keys.map((key) => ({ path: [...path, key], message: issue.message }))
  }
  if (issue.code === 'invalid_union' && issue.errors.length > 0) {
    const fits = issue.errors.filter((branch) => !branch.some((each) => each.path.length === 0 && isTypeIssue(each)))
    const nearest = [...fits].sort((a, b) => mismatch(a) - mismatch(b))[0]
    if (nearest) return nearest.flatMap((each) => flatten(each, path))
  }
  return [{ path, message: issue.message }]
}

function isTypeIssue(issue: Issue): boolean {
  return issue.code === 'invalid_type' || issue.code === 'invalid_value'
}

/** What a contract found, as problems with full paths; in a union, those of the form that was most likely meant. */
export function problemsOf(error: z.core.$ZodError, before: Path = []): Problem[] {
  return error.issues.flatMap((issue) => flatten(issue, before))
}
