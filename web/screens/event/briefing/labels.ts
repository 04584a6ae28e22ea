interface Box {
  left: number
  right: number
  top: number
  bottom: number
}

export interface Label {
  text: string
  /** Middle of the text (px). */
  x: number
  /** Its base line. */
  y: number
}

/** Of bold letters of this size, on average; a little more than most need. */
const letter = 0.56

const overlap = (a: Box, b: Box): number =>
  Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
  Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top))

/**
 * Names beside the points that they belong to, each where it covers least of the names before it and of what else is drawn: above or
 * below its point, moved sideways as far as it stays beside it, and within the picture.
 */
export function placeLabels(
  points: readonly { text: string; x: number; y: number }[],
  of: { width: number; height: number; size: number; drawn: readonly { x: number; y: number; radius: number }[] },
): Label[] {
  const { width, height, size } = of
  const taken = of.drawn.map(({ x, y, radius }) => around({ x, y }, { wide: 2 * radius, up: radius, down: radius }))
  return points.map(({ text, x, y }) => {
    const wide = letter * size * text.length
    const tries = [-0.9, 1.8, -2, 2.9, -3.1, 4].flatMap((rows) =>
      [0, 0.45, -0.45].map((aside) => ({
        x: Math.min(width - wide / 2 - 2, Math.max(wide / 2 + 2, x + aside * wide)),
        y: y + rows * size,
      })),
    )
    const boxed = tries
      .map((at) => ({ at, box: around(at, { wide, up: 0.8 * size, down: 0.25 * size }) }))
      .filter(({ box }) => box.top >= 0 && box.bottom <= height)
    const covers = ({ box }: (typeof boxed)[number]) => taken.reduce((sum, other) => sum + overlap(box, other), 0)
    const best = boxed.reduce((least, each) => (covers(each) < covers(least) ? each : least), boxed[0]!)
    taken.push(best.box)
    return { text, ...best.at }
  })
}

const around = (
  { x, y }: { x: number; y: number },
  { wide, up, down }: { wide: number; up: number; down: number },
): Box => ({
  left: x - wide / 2,
  right: x + wide / 2,
  top: y - up,
  bottom: y + down,
})
