import type { Scale } from '../../scale.ts'
import { apart, type CurvePanel, shownLimits } from './panel.ts'

interface Picture {
  x: readonly number[]
  scale: Scale
  up: Scale
  /** Where the lines begin and end, and the picture's top (px). */
  left: number
  right: number
  top: number
  /** Where texts may go down to. */
  bottom: number
}

export interface LimitLabel {
  id: string
  text: string
  /** Height of the limit's own line (px). */
  line: number
  /** Whether its text stands at the left end; and the height of its base line (px). */
  left: boolean
  at: number
}

const [letter, size] = [6.6, 13]
/** From the middle of a text to a curve (px): closer, and the curve goes through the letters. */
const enough = 7
/** Lines of text that a limit's text may stand away from it where close to it a curve would go through it. */
const away = [0, 1, 2, 3]

/**
 * Where the limits' texts stand: above or below their line, at the left or the right, wherever the curves leave most room, some
 * lines further off where they leave none; and none on another.
 */
export function limitLabels(panel: CurvePanel, picture: Picture): LimitLabel[] {
  const { up, top, bottom } = picture
  const labels = shownLimits(panel).map(({ id, value, text }): LimitLabel => {
    const line = up(value)
    const placed = away.map((lines) => {
      const places = [true, false].flatMap((left) =>
        [line + size + lines * size, line - 4 - lines * size]
          .filter((at) => at - size >= top - 6 && (lines === 0 || at <= bottom))
          .map((at) => ({ id, text, line, left, at })),
      )
      const rooms = places.map((place) => roomAt(panel, picture, place))
      const room = Math.max(...rooms)
      return { room, place: places[rooms.indexOf(room)]! }
    })
    return (placed.find(({ room }) => room >= enough) ?? placed[0]!).place
  })
  for (const side of [true, false]) {
    const here = labels.filter(({ left }) => left === side)
    const placed = apart(
      here.map(({ at }) => at),
      size,
    )
    for (const [index, label] of here.entries()) label.at = placed[index]!
  }
  return labels
}

/** How far the nearest piece of a curve is from the middle of a text (px); beyond a text's own height more room is no better. */
function roomAt({ lines }: CurvePanel, { x, scale, up, left, right }: Picture, label: LimitLabel): number {
  const width = label.text.length * letter
  const [from, to] = label.left ? [left, left + width] : [right - width, right]
  const middle = label.at - size / 3
  const covered = x.slice(1).flatMap((place, i) => (scale(place) >= from && scale(x[i]!) <= to ? [i] : []))
  const gaps = lines.flatMap(({ values }) =>
    covered.map((i) => {
      const [a, b] = [up(values[i]!), up(values[i + 1]!)]
      return Math.max(0, Math.min(a, b) - middle, middle - Math.max(a, b))
    }),
  )
  return Math.min(2 * size, ...gaps)
}
