import { type Stored, useAllStored, useStored } from '../../data/documents.ts'

interface Loose {
  id: string
  revision?: number
}

export interface Parts {
  game: Stored<'game'>
  options: { option: Stored<'option'>; design: Stored<'design'> }[]
}

/** The documents that a comparison names: at its revisions, or at the newest where it names none. */
export function usePartsOf(record: { game: Loose; options: { option: Loose; design: Loose }[] } | null) {
  const game = useStored('game', record?.game.id ?? null, record?.game.revision)
  const options = useAllStored('option', record?.options.map(({ option }) => option) ?? [])
  const designs = useAllStored('design', record?.options.map(({ design }) => design) ?? [])
  const data: Parts | undefined =
    record && game.data && options.data && designs.data
      ? {
          game: game.data,
          options: options.data.map((option, index) => ({ option, design: designs.data![index]! })),
        }
      : undefined
  return {
    data,
    error: game.error ?? options.error ?? designs.error,
    refetch: () => {
      void game.refetch()
      options.refetch()
      designs.refetch()
    },
  }
}
