import { type Alliance, alliances, type Match, type Position, type Seat, type Slot } from '../scouting/types.ts'

export const positions: readonly Position[] = [1, 2, 3]

/** The six places of a match, in the order in which they are listed. */
export const seats: readonly Seat[] = alliances.flatMap((alliance) =>
  positions.map((position): Seat => ({ alliance, position })),
)

/** One name for a seat within a match. */
export const seatKey = ({ alliance, position }: Seat): string => `${alliance}.${position}`

/** Where a slot of a side stands: where it says so, else in the order of the list. */
export const positionOf = (slot: Slot, index: number): Position => slot.position ?? ((index + 1) as Position)

/** Who plays at a seat. */
export function slotAt(match: Match, { alliance, position }: Seat): Slot {
  const side = match[alliance]
  return side.find((slot, index) => positionOf(slot, index) === position) ?? (side[position - 1] as Slot)
}

export interface Seated {
  seat: Seat
  slot: Slot
}

/** All six, by alliance and position. */
export const slotsOf = (match: Match): Seated[] => seats.map((seat) => ({ seat, slot: slotAt(match, seat) }))

/** The seat at which a team plays, if it does. */
export const seatOf = (match: Match, team: string): Seat | null =>
  slotsOf(match).find(({ slot }) => slot.team === team)?.seat ?? null

export const otherAlliance = (alliance: Alliance): Alliance => (alliance === 'red' ? 'blue' : 'red')
