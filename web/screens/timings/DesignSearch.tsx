import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'

/** Reductions and numbers of motors for a mechanism, with their time, current and points per match. */
export function DesignSearch(_: { mechanism: Mechanism; index: number; game: Game; option: Option }) {
  return null
}
