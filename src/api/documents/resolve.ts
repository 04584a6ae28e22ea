import type { Option, OptionRecord, Reference } from '../../model/documents/index.ts'
import type { Problem } from '../../model/errors.ts'
import type { WorkspaceStore } from '../../store/types.ts'
import { missing, read, type Stored } from './read.ts'

/** An option with the robot of its design, and the revisions that it was put together from. */
export interface ResolvedOption {
  option: Option
  game: Reference
  design: Reference
}

export interface Parts {
  game: Stored<'game'>
  design: Stored<'design'>
}

/** The game and the design that an option belongs to, or what is wrong with its references. */
export async function partsOf(workspace: WorkspaceStore, record: OptionRecord): Promise<Parts | Problem> {
  const [game, design] = await Promise.all([
    read(workspace, 'game', { id: record.game }),
    read(workspace, 'design', { id: record.design }),
  ])
  if (!game) return { path: ['game'], ...missing('game', { id: record.game }) }
  if (!design) return { path: ['design'], ...missing('design', { id: record.design }) }
  if (design.body.game === record.game) return { game, design }
  const message = `The design “${record.design}” belongs to the game “${design.body.game}”, not to “${record.game}”`
  return { path: ['design'], message }
}

/** The option's play with its design's robot. */
export function resolved(record: OptionRecord, { game, design }: Parts): ResolvedOption {
  return {
    option: { ...record.option, robot: design.body.robot },
    game: { id: record.game, revision: game.revision },
    design: { id: record.design, revision: design.revision },
  }
}
