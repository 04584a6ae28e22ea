import { useMemo } from 'react'
import type { Reference } from '../../../src/model/documents/records.ts'
import type { Game } from '../../../src/model/documents/types.ts'
import { type Stored, useAllStored, useList } from '../../data/documents.ts'

/** A reading with the rules that it stands for. */
export interface ReadGame {
  id: string
  name: string
  rule: string
  revision: number
  game: Game
}

/** All readings that are named, of whatever game. */
export function useReadingRecords(): Stored<'reading'>[] {
  const list = useList('reading')
  return useAllStored('reading', list.data ?? []).data ?? none
}

const none: Stored<'reading'>[] = []

/** The readings of a game that stand for another revision than the one named, with their rules. */
export function useReadings(named: Reference): ReadGame[] {
  const records = useReadingRecords()
  const own = useMemo(
    () => records.filter(({ body }) => body.game.id === named.id && body.game.revision !== named.revision),
    [records, named.id, named.revision],
  )
  const games = useAllStored(
    'game',
    own.map(({ body }) => body.game),
  )
  const key = JSON.stringify([
    own.map(({ id, revision }) => [id, revision]),
    games.data?.map(({ revision }) => revision),
  ])
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key says when one of them is another
  return useMemo(
    () =>
      games.data && games.data.length === own.length
        ? own.map(({ id, body }, index) => ({
            id,
            name: body.name,
            rule: body.rule,
            revision: body.game.revision,
            game: games.data![index]!.body,
          }))
        : [],
    [key],
  )
}
