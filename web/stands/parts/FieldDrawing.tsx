import type { Field, Game, Point } from '../../../src/model/documents/types.ts'
import { seenFrom, touchedAt, type View } from '../record/ground.ts'
import { words } from '../words/catalogue.ts'

export interface Mark {
  id: string
  at: Point
  sign: string
  shape: 'place' | 'start' | 'robot' | 'far'
  strong?: boolean
}

/** Units of the drawing per metre, so that letters have a size. */
const scale = 40

const toDrawing = (field: Field, [x, y]: Point): Point => [x * scale, (field.width - y) * scale]

/** The marks of an alliance's own places and starts. */
export function marksOf(game: Game): Mark[] {
  const places = (of: readonly { spots: readonly { id: string; at: Point }[] }[], letter: string) =>
    of.flatMap(({ spots }, index) =>
      spots.map(({ id, at }): Mark => ({ id, at, sign: `${letter}${index + 1}`, shape: 'place' })),
    )
  return [...places(game.sources, 'S'), ...places(game.goals, 'G'), ...places(game.finishes, 'F')]
}

/** The field as it is seen from where one sits, own coordinates in, own coordinates out. */
export function FieldDrawing(props: {
  game: Game
  view: View
  marks: readonly Mark[]
  touched?: (at: Point) => void
  label?: string
}) {
  const { game, view, marks } = props
  const { field } = game
  const place = (point: Point) => toDrawing(field, seenFrom(field, view, point))
  const [width, height] = [field.length * scale, field.width * scale]
  const touch = (event: React.PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect()
    const x = ((event.clientX - box.left) / box.width) * field.length
    const y = field.width - ((event.clientY - box.top) / box.height) * field.width
    props.touched?.(touchedAt(field, view, [x, y]))
  }
  return (
    <svg
      className="ground"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={props.label ?? words().field.drawing}
      onPointerDown={props.touched && touch}
    >
      <rect width={width} height={height} className="ground-floor" />
      <Walls width={width} height={height} redWall={view.redWall} />
      <path d={`M${width / 2} 0V${height}`} className="ground-line" />
      {field.obstacles.map(({ id, outline }) => (
        <path key={id} className="ground-land" d={`M${outline.map((corner) => place(corner).join(' ')).join('L')}Z`} />
      ))}
      {marks.map((mark) => (
        <DrawnMark key={mark.id} mark={mark} at={place(mark.at)} />
      ))}
    </svg>
  )
}

/** Each alliance's wall with its letter, so that colour is not the only sign. */
function Walls(props: { width: number; height: number; redWall: 'left' | 'right' }) {
  const texts = words().match
  const sides = props.redWall === 'left' ? (['red', 'blue'] as const) : (['blue', 'red'] as const)
  return sides.map((alliance, index) => {
    const x = index === 0 ? 0 : props.width - 34
    return (
      <g key={alliance}>
        <rect x={x} width={34} height={props.height} className={`wall ${alliance}`} />
        <text x={x + 17} y={props.height / 2 + 9} textAnchor="middle" fontSize="26" className="wall-letter">
          {texts[alliance][0]}
        </text>
      </g>
    )
  })
}

function DrawnMark({ mark: { sign, shape, strong }, at: [x, y] }: { mark: Mark; at: Point }) {
  const className = `mark ${shape}${strong ? ' strong' : ''}`
  return (
    <g transform={`translate(${x} ${y})`} className={className}>
      {shape === 'place' && <circle r={20} />}
      {shape === 'far' && <circle r={14} />}
      {shape === 'start' && <rect x={-22} y={-22} width={44} height={44} />}
      {shape === 'robot' && <rect x={-24} y={-24} width={48} height={48} rx={6} />}
      {sign && (
        <text y={9} textAnchor="middle" fontSize="24">
          {sign}
        </text>
      )}
    </g>
  )
}
