import { type LineupSetup, lineupFromSearch, lineupToSearch } from './lineup/lineupSetup.ts'

/** Ids of options by position; null where nobody stands. */
export type Slots = readonly [string | null, string | null, string | null]

export interface Sides {
  ours: Slots
  theirs: Slots
}

/** A match to play: who meets, at which event's level, how often, and on which luck. */
export interface MatchSetup extends Sides {
  level: string | null
  replicates: number
  /** Standard error of the chance to win at which no more matches are played; null: all are. */
  precision: number | null
  seed: number
  /** The line-up that is set beside the first. */
  other: Sides | null
  /** What the line-up is looked for among; null where nothing was chosen. */
  lineup: LineupSetup | null
}

export const lengths = { quick: 2_000, usual: 20_000, exact: 200_000 } as const
export type Length = keyof typeof lengths

/** As the server takes them, too. */
export const precisions = { min: 0.0005, max: 0.5 }

export const nobody: Slots = [null, null, null]
export const largestSeed = 2 ** 31 - 1

export const isComplete = ({ ours, theirs }: Sides): boolean =>
  ours.every((id) => id !== null) && theirs.every((id) => id !== null)

export const sameSides = (a: Sides, b: Sides): boolean =>
  [...a.ours, ...a.theirs].every((id, position) => id === [...b.ours, ...b.theirs][position])

export const withSlot = (slots: Slots, position: number, id: string | null): Slots =>
  slots.map((before, index) => (index === position ? id : before)) as unknown as Slots

const written = (slots: Slots): string => slots.map((id) => encodeURIComponent(id ?? '')).join(',')

/** The set-up as the address keeps it, so that a link shows the same match. */
export function toSearch(setup: MatchSetup): string {
  const { other, level } = setup
  return [
    `ours=${written(setup.ours)}`,
    `theirs=${written(setup.theirs)}`,
    ...(level === null ? [] : [`level=${encodeURIComponent(level)}`]),
    `matches=${setup.replicates}`,
    ...(setup.precision === null ? [] : [`precision=${setup.precision}`]),
    `seed=${setup.seed}`,
    ...(other ? [`other-ours=${written(other.ours)}`, `other-theirs=${written(other.theirs)}`] : []),
    ...lineupToSearch(setup.lineup),
  ].join('&')
}

function slotsOf(text: string | null): Slots | null {
  if (text === null) return null
  const ids = text.split(',').map((id) => (id === '' ? null : id))
  return [ids[0] ?? null, ids[1] ?? null, ids[2] ?? null]
}

const whole = (text: string | null, least: number, most: number): number | null => {
  const value = Number(text ?? Number.NaN)
  return Number.isInteger(value) && value >= least && value <= most ? value : null
}

function precisionOf(text: string | null): number | null {
  const value = Number(text ?? Number.NaN)
  return value >= precisions.min && value <= precisions.max ? value : null
}

/** Reads an address; null where it says nothing about a match. What can not be read gets what a new match has. */
export function fromSearch(search: string): MatchSetup | null {
  const said = new URLSearchParams(search)
  const ours = slotsOf(said.get('ours'))
  const theirs = slotsOf(said.get('theirs'))
  if (!ours && !theirs) return null
  const others = [slotsOf(said.get('other-ours')), slotsOf(said.get('other-theirs'))] as const
  const matches = whole(said.get('matches'), 1, lengths.exact)
  return {
    ours: ours ?? nobody,
    theirs: theirs ?? nobody,
    level: said.get('level'),
    replicates: Object.values(lengths).find((length) => length === matches) ?? lengths.usual,
    precision: precisionOf(said.get('precision')),
    seed: whole(said.get('seed'), 0, largestSeed) ?? 1,
    other: others[0] && others[1] ? { ours: others[0], theirs: others[1] } : null,
    lineup: lineupFromSearch(said),
  }
}

/** A first match: one way to play of each design, the same on both sides, in the order that they are listed. */
export function firstSetup(
  ways: readonly { id: string; body: { design: string } }[],
  levels: readonly string[],
): MatchSetup {
  const designs = [...new Set(ways.map(({ body }) => body.design))]
  const first = designs.map((design) => ways.find(({ body }) => body.design === design)!.id)
  const slots: Slots =
    first.length === 0 ? nobody : ([0, 1, 2].map((position) => first[position % first.length]!) as unknown as Slots)
  return {
    ours: slots,
    theirs: slots,
    level: levels[0] ?? null,
    replicates: lengths.usual,
    precision: null,
    seed: 1,
    other: null,
    lineup: null,
  }
}

/** The same with nobody where an option is no longer there, and with a level that the game has. */
export function withKnown(setup: MatchSetup, ids: ReadonlySet<string>, levels: readonly string[]): MatchSetup {
  const known = (slots: Slots) => slots.map((id) => (id !== null && ids.has(id) ? id : null)) as unknown as Slots
  const sides = ({ ours, theirs }: Sides): Sides => ({ ours: known(ours), theirs: known(theirs) })
  const level = setup.level !== null && levels.includes(setup.level) ? setup.level : (levels[0] ?? null)
  const { lineup } = setup
  return {
    ...setup,
    ...sides(setup),
    level,
    other: setup.other && sides(setup.other),
    lineup: lineup && {
      ...lineup,
      further: lineup.further.map(({ slots, weight }) => ({ slots: known(slots), weight })),
    },
  }
}
