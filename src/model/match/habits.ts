import type { Arena } from './kernel/arena.ts'
import { at } from './kernel/layout.ts'
import type { ObservedPlayer } from './observed.ts'
import type { PlayedLeg } from './player.ts'
import { perWord, purposes } from './words.ts'

/** An observed robot's habit in the memory of the event loop, and which of its draws a match meets. */
export class SeatedHabit {
  private readonly arena: Arena
  private readonly player: ObservedPlayer
  private readonly shares: number
  private readonly countShares: number
  private readonly habit: number
  private readonly minds = new Map<number, number>()
  /** Places of the chances of success that may differ from draw to draw. */
  private readonly chances: { place: number; leg: PlayedLeg }[] = []
  private readonly team: number

  constructor(arena: Arena, player: ObservedPlayer) {
    const { goals, counts, ground } = player
    this.arena = arena
    this.player = player
    this.team = hashOf(player.option.robot.id)
    this.shares = arena.copiedReals(player.now.goals)
    this.countShares = arena.copiedReals(player.now.pieces)
    this.habit = arena.copiedWholes([
      goals.length,
      this.shares,
      counts.length,
      this.countShares,
      ...goals.flatMap((goal) => [ground.placeOf.get(goal.id) as number, player.sourcesFor(goal)]),
      ...counts,
    ])
  }

  /** Place of its mind when its drives take (1 + slowdown) times as long: whole legs know no drive, staged ones do. */
  mind(slowdown: number): number {
    const known = this.minds.get(slowdown)
    if (known !== undefined) return known
    const place = this.arena.copiedWholes([-1, this.habit, this.arena.copiedReals([1 + slowdown]), 0])
    this.minds.set(slowdown, place)
    return place
  }

  /** A leg whose chance of success stands at a place of the memory. */
  note(place: number, leg: PlayedLeg): void {
    if (this.player.draws.length > 1) this.chances.push({ place, leg })
  }

  /**
   * Takes the draw with this number from what is believed about the team: the same in whatever seat and match the team plays,
   * a function of seed, draw and team alone.
   */
  meet(draw: number): void {
    const { arena, player } = this
    const { draws } = player
    if (draws.length < 2) return
    arena.drawWords(at.habitWords, 4, purposes.team, this.team, draw)
    const u = ((arena.views.words[at.habitWords] as number) + 0.5) * perWord
    player.now = draws[Math.floor(u * draws.length)] as ObservedPlayer['now']
    const { reals } = arena.views
    reals.set(player.now.goals, this.shares)
    reals.set(player.now.pieces, this.countShares)
    for (const { place, leg } of this.chances) reals[place] = player.successOf(leg)
  }
}

const encoder = new TextEncoder()

/** A number of 32 bits for a name: FNV-1a (Fowler, Noll & Vo; IETF draft draft-eastlake-fnv) over its UTF-8 bytes. */
export function hashOf(name: string): number {
  let hash = 0x811c9dc5
  for (const byte of encoder.encode(name)) hash = Math.imul(hash ^ byte, 0x01000193)
  return hash >>> 0
}
