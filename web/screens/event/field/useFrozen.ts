import type { Robot } from '../../../../src/model/documents/types.ts'
import { type Stored, useAllStored, useList } from '../../../data/documents.ts'

/** A design as a decision record has kept it. */
export interface Frozen {
  decision: { id: string; name: string }
  robot: Robot
}

/** Robots of decision records of a game, where their design is still there; undefined: not known yet. */
export function useFrozen(game: string, designs: readonly Stored<'design'>[] | undefined) {
  const list = useList('decision')
  const all = useAllStored('decision', list.data ?? [])
  const known = list.data && all.data
  const data =
    known &&
    designs &&
    all.data!.flatMap(({ id, name, body: { snapshot } }): Frozen[] => {
      if (snapshot.game.id !== game) return []
      const robots = new Map(snapshot.options.map(({ robot }) => [robot.id, robot]))
      return [...robots.values()]
        .filter((robot) => designs.some((design) => design.id === robot.id))
        .map((robot) => ({ decision: { id, name }, robot }))
    })
  return { data, error: list.error ?? all.error, refetch: () => void list.refetch() }
}
