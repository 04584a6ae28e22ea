import { useMutation, useQueries, useQuery, useQueryClient } from '@tanstack/react-query'
import type { PartRecord } from '../../src/model/documents/part.ts'
import type { QuickSheetRecord, ReadingRecord } from '../../src/model/documents/quickSheet.ts'
import type {
  ComparisonRecord,
  DecisionRecord,
  DesignRecord,
  DocumentKind,
  OptionRecord,
} from '../../src/model/documents/records.ts'
import type { TimingRecord } from '../../src/model/documents/timing.ts'
import type { Game } from '../../src/model/documents/types.ts'
import type { EventRecord } from '../../src/model/scouting/types.ts'
import type { SaveRequest, StoredDocument } from '../../src/store/types.ts'
import {
  getDocument,
  listDocuments,
  listRevisions,
  removeDocument,
  restoreDocument,
  saveDocument,
  saveReading,
} from './api.ts'

/** What the body of each kind of document is. The server checked it when it was saved. */
export interface Bodies {
  game: Game
  design: DesignRecord
  option: OptionRecord
  comparison: ComparisonRecord
  decision: DecisionRecord
  quickSheet: QuickSheetRecord
  reading: ReadingRecord
  timing: TimingRecord
  part: PartRecord
  event: EventRecord
}

export type Stored<K extends DocumentKind> = Omit<StoredDocument, 'body'> & { body: Bodies[K] }

const get = <K extends DocumentKind>(kind: K, id: string, revision?: number) =>
  getDocument(kind, id, revision) as Promise<Stored<K>>

const key = (kind: DocumentKind, id: string, revision?: number) => ['document', kind, id, revision ?? 'newest'] as const

export const useList = (kind: DocumentKind) =>
  useQuery({ queryKey: ['documents', kind], queryFn: () => listDocuments(kind) })

/** A document at its newest revision, or at the one asked for. `id` null: not yet known. */
export const useStored = <K extends DocumentKind>(kind: K, id: string | null, revision?: number) =>
  useQuery({
    queryKey: key(kind, id ?? '', revision),
    queryFn: () => get(kind, id!, revision),
    enabled: id !== null,
    // A revision never changes; the newest one may.
    staleTime: revision === undefined ? 0 : Number.POSITIVE_INFINITY,
  })

/** Several documents of one kind at once; `data` is complete or undefined. */
export function useAllStored<K extends DocumentKind>(
  kind: K,
  references: readonly { id: string; revision?: number }[],
) {
  return useQueries({
    queries: references.map(({ id, revision }) => ({
      queryKey: key(kind, id, revision),
      queryFn: () => get(kind, id, revision),
      staleTime: revision === undefined ? 0 : Number.POSITIVE_INFINITY,
    })),
    combine: (results) => ({
      data: results.every((result) => result.data !== undefined) ? results.map((result) => result.data!) : undefined,
      error: results.find((result) => result.error)?.error ?? null,
      isPending: results.some((result) => result.isPending),
      refetch: () => {
        for (const result of results) void result.refetch()
      },
    }),
  })
}

export const useRevisions = (kind: DocumentKind, id: string, enabled = true) =>
  useQuery({ queryKey: ['revisions', kind, id], queryFn: () => listRevisions(kind, id), enabled })

/** Saving, restoring and removing; lists and documents on the screen follow. */
export function useChanges() {
  const queries = useQueryClient()
  const follow = (kind: DocumentKind, id: string) =>
    Promise.all([
      queries.invalidateQueries({ queryKey: ['documents', kind] }),
      queries.invalidateQueries({ queryKey: ['document', kind, id] }),
      queries.invalidateQueries({ queryKey: ['revisions', kind, id] }),
    ])
  const save = useMutation({
    mutationFn: (request: SaveRequest) => saveDocument(request),
    onSuccess: (_, { kind, id }) => follow(kind, id),
  })
  const restore = useMutation({
    mutationFn: (of: { kind: DocumentKind; id: string; revision: number; base: number }) =>
      restoreDocument(of.kind, of.id, of.revision, of.base),
    onSuccess: (_, { kind, id }) => follow(kind, id),
  })
  const remove = useMutation({
    mutationFn: (of: { kind: DocumentKind; id: string; undo?: boolean }) => removeDocument(of.kind, of.id, of.undo),
    onSuccess: (_, { kind, id }) => follow(kind, id),
  })
  return { save, restore, remove }
}

/** A reading of a game's rules; the game and the lists on the screen follow. */
export function useSaveReading() {
  const queries = useQueryClient()
  return useMutation({
    mutationFn: saveReading,
    onSuccess: (_, { id }) =>
      Promise.all(
        [
          ['documents', 'game'],
          ['documents', 'reading'],
          ['document', 'game', id],
          ['revisions', 'game', id],
        ].map((queryKey) => queries.invalidateQueries({ queryKey })),
      ),
  })
}
