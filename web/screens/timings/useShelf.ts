import { useMemo } from 'react'
import type { Part } from '../../../src/model/timing/index.ts'
import { useAllStored, useList } from '../../data/documents.ts'

export interface Shelf {
  /** By name; empty until they are there. */
  parts: readonly Part[]
  loaded: boolean
  error: Error | null
}

/** Those of one kind. */
export const ofKind = <Kind extends Part['kind']>(parts: readonly Part[], kind: Kind) =>
  parts.filter((part): part is Extract<Part, { kind: Kind }> => part.kind === kind)

/** The parts shelf. */
export function useShelf(): Shelf {
  const list = useList('part')
  const stored = useAllStored(
    'part',
    (list.data ?? []).map(({ id }) => ({ id })),
  )
  const { data } = stored
  const parts = useMemo(
    () => (data ?? []).map(({ body }) => body.part).toSorted((a, b) => a.name.localeCompare(b.name)),
    [data],
  )
  return { parts, loaded: list.data !== undefined && data !== undefined, error: list.error ?? stored.error }
}
