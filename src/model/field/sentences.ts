/** A start or spot as a sentence names it: the name, and the spot's id where its place has several. */
export interface Called {
  name: string
  spot?: string
}

/** What keeps a robot's centre away from a point. */
export type Blocker = { border: true } | { obstacle: string }

export const called = ({ name, spot }: Called): string =>
  spot === undefined ? `'${name}'` : `'${name}' (spot '${spot}')`

export const blocker = (by: Blocker): string =>
  'border' in by ? "the field's border" : `the obstacle '${by.obstacle}'`

/** What outlines, routes and reach say, in English and SI; every `apart` and `at` is a length. */
export const fieldSentences = {
  fewCorners: (of: { count: number }) => `An outline needs at least 3 corners, and this one has ${of.count}.`,
  manyCorners: (of: { most: number; count: number }) =>
    `An outline can have up to ${of.most} corners, and this one has ${of.count}.`,
  sameCorners: (of: { one: number; other: number }) => `Corners ${of.one} and ${of.other} are the same point.`,
  foldsBack: (of: { corner: number }) => `At corner ${of.corner} the outline runs back along itself.`,
  edgesCross: (of: { one: number; other: number }) =>
    `The edges after corners ${of.one} and ${of.other} cross or touch.`,
  noArea: (_: Record<string, never>) => 'The outline encloses no area.',

  fieldTooFine: (of: { count: number; most: number }) =>
    `The field's obstacles have ${of.count} corners; routes are computed for up to ${of.most}.`,
  noSuchPlace: (of: { id: string }) => `The game has no start or spot with the id '${of.id}'.`,
  noWay: (of: { from: Called; to: Called; apart: number }) =>
    `There is no way from ${called(of.from)} to ${called(of.to)}: no gap is wide enough for the robot, whose centre keeps ${of.apart} m from obstacles and border.`,
  wayBlocked: (of: { from: Called; to: Called; place: Called; at: readonly number[]; by: Blocker; apart: number }) =>
    `There is no way from ${called(of.from)} to ${called(of.to)}: ${called(of.place)} at (${of.at.join(', ')}) is too near ${blocker(of.by)} for the robot, whose centre keeps ${of.apart} m from it.`,
  tooNear: (of: { place: Called; by: Blocker; apart: number }) =>
    `${called(of.place)} is too near ${blocker(of.by)}: the robot’s centre keeps ${of.apart} m from it`,
  notReached: (of: { from: Called; to: Called }) =>
    `There is no way from ${called(of.from)} to ${called(of.to)}: no gap is wide enough for this robot`,
} as const
