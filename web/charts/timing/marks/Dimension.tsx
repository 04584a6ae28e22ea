import { pixel } from '../../scale.ts'

/** About as wide as a letter is drawn (px), to keep a text inside of its picture. */
const letter = 7

export const textWidth = (text: string): number => text.length * letter

/** Where a text of this length has its middle so that none of it is cut off. */
export function keptInside(middle: number, text: string, width: number): number {
  const half = textWidth(text) / 2 + 2
  return half * 2 > width ? width / 2 : Math.min(width - half, Math.max(half, middle))
}

/** A length as drawings tell it: a line with a stroke at each end, and the number beside it. */
export function Across(props: { from: number; to: number; y: number; text: string; width: number; above?: boolean }) {
  const { from, to, y, text, width } = props
  return (
    <g aria-hidden="true">
      <path d={`M${pixel(from)} ${y}H${pixel(to)}${stroke(from, y)}${stroke(to, y)}`} className="dimension" />
      <text
        x={pixel(keptInside((from + to) / 2, text, width))}
        y={props.above ? y - 6 : y + 15}
        className="halo measure"
        textAnchor="middle"
      >
        {text}
      </text>
    </g>
  )
}

/** The same upright; its number stands left or right of it. */
export function Upright(props: { from: number; to: number; x: number; text: string; side: 'left' | 'right' }) {
  const { from, to, text, side } = props
  const x = pixel(props.x)
  return (
    <g aria-hidden="true">
      <path
        d={`M${x} ${pixel(from)}V${pixel(to)}${stroke(props.x, from)}${stroke(props.x, to)}`}
        className="dimension"
      />
      <text
        x={side === 'left' ? x - 7 : x + 7}
        y={pixel((from + to) / 2 + 4)}
        className="halo measure"
        textAnchor={side === 'left' ? 'end' : 'start'}
      >
        {text}
      </text>
    </g>
  )
}

const stroke = (x: number, y: number): string => `M${pixel(x - 4)} ${pixel(y + 4)}l8 -8`
