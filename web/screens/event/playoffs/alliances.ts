import { playoffAlliances } from '../../../../src/model/event/alliances.ts'
import { membersOf, type Selection } from '../../../../src/model/picks/selection/index.ts'
import type { EventPack } from '../../../data/eventPack.ts'

/** Alliances of the playoffs, by number, with what they are known from. */
export interface Formed {
  alliances: string[][]
  from: 'selection' | 'matches'
  /** The selection is not over: what stands here is not the end. */
  running: boolean
}

/** From the selection as it was called out, else from who has played together; null: neither says enough. */
export function formedAlliances(pack: EventPack, selection: Selection | null): Formed | null {
  const rated = (teams: readonly string[]) => teams.filter((team) => pack.robots[team] !== undefined)
  if (selection) {
    const all = selection.state.alliances.map((each) => rated(membersOf(each))).filter((each) => each.length >= 3)
    if (all.length >= 2) return { alliances: all, from: 'selection', running: selection.state.turn !== null }
  }
  const played = playoffAlliances(pack.matches)
    .map(rated)
    .filter((each) => each.length >= 3)
  return played.length >= 2 ? { alliances: played, from: 'matches', running: false } : null
}
