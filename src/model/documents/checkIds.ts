import type { Path, Problem } from '../errors.ts'
import { type Listed, problem, type Thing } from './sentences.ts'

/** Entries of one list, or of several that share their ids, must have different ids. */
export function unique(entries: readonly { id: string; path: Path }[], list: Listed): Problem[] {
  const seen = new Set<string>()
  return entries.flatMap(({ id, path }) => {
    if (!seen.has(id)) {
      seen.add(id)
      return []
    }
    return [problem(path, 'idTwice', { list, id })]
  })
}

/** Ids with their paths, for a list of things that have an id. */
export function idsOf(entries: readonly { id: string }[], path: Path): { id: string; path: Path }[] {
  return entries.map(({ id }, index) => ({ id, path: [...path, index, 'id'] }))
}

/** An id must be that of one of the things named. */
export function known(id: string, ids: ReadonlySet<string>, at: { path: Path; noun: Thing }): Problem[] {
  return ids.has(id) ? [] : [problem(at.path, 'unknown', { thing: at.noun, id })]
}

/** Every id of a list must be known and be named once. */
export function knownList(
  list: readonly string[],
  ids: ReadonlySet<string>,
  at: { path: Path; noun: Thing },
): Problem[] {
  return list.flatMap((id, index) => {
    const path = [...at.path, index]
    if (list.indexOf(id) < index) return [problem(path, 'namedTwice', { thing: at.noun, id })]
    return known(id, ids, { path, noun: at.noun })
  })
}

/** Every key of an object must be a known id. */
export function knownKeys(
  entries: { readonly [id: string]: unknown },
  ids: ReadonlySet<string>,
  at: { path: Path; noun: Thing },
): Problem[] {
  return Object.keys(entries).flatMap((id) => known(id, ids, { path: [...at.path, id], noun: at.noun }))
}

export function idSet(entries: readonly { id: string }[]): ReadonlySet<string> {
  return new Set(entries.map(({ id }) => id))
}

/** The same problems seen from a document that contains this one. */
export function within(before: Path, problems: readonly Problem[]): Problem[] {
  return problems.map((inner) => ({ ...inner, path: [...before, ...inner.path] }))
}
