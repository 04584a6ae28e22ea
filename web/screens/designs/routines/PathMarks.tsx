import type { Auto, Game, Point } from '../../../../src/model/documents/types.ts'
import type { FieldFrame } from '../../../charts/FieldMap.tsx'
import type { Place } from '../../../data/difference.ts'
import { placeKey, useEdit } from '../../../shell/fields/EditContext.tsx'
import { useUnits } from '../../../units/system.ts'
import { words } from '../../../words/catalogue.ts'
import { seconds } from '../../../words/format.ts'
import { Handle } from '../../games/field/Handle.tsx'
import { sayAt } from '../../games/field/names.ts'
import { type PathPoint, pointAt } from './path.ts'

/** The path on the field: its line, its points to be moved, and where on it each step scores. */
export function PathMarks(props: {
  game: Game
  auto: Auto
  frame: FieldFrame
  path: readonly PathPoint[]
  place: Place
  readOnly: boolean
  metresPerPixel(): number
  onAdd(at: Point): void
  onDrag(index: number, by: Point): void
  onDrop(index: number): void
  onCancel(): void
  onStep(index: number, steps: Point): void
  onRemove(index: number): void
}) {
  const { game, auto, frame, path, place } = props
  const { field } = game
  const edit = useEdit()
  const system = useUnits()
  const texts = words().routines.path
  const line = path.map(([, x, y]) => `${frame.x(x)} ${frame.y(y)}`).join('L')
  const troubled = (index: number) =>
    edit.problems.some(({ path: at }) => placeKey(at).startsWith(`${placeKey([...place, index])}/`))
  return (
    <>
      {!props.readOnly && (
        // biome-ignore lint/a11y/noStaticElementInteractions: the button below adds a point by keyboard
        <rect
          x={frame.x(0)}
          y={frame.y(field.width)}
          width={field.length * frame.metre}
          height={field.width * frame.metre}
          fill="transparent"
          style={{ cursor: 'crosshair' }}
          onClick={(event) => {
            const box = event.currentTarget.getBoundingClientRect()
            props.onAdd([
              ((event.clientX - box.left) / box.width) * field.length,
              (1 - (event.clientY - box.top) / box.height) * field.width,
            ])
          }}
        />
      )}
      {path.length > 1 && (
        <path
          d={`M${line}`}
          fill="none"
          style={{ stroke: 'var(--note)', pointerEvents: 'none' }}
          strokeWidth="2.5"
          strokeLinejoin="round"
        />
      )}
      {auto.steps.map((step, index) => {
        const at = pointAt(path, step.at)
        return (
          at && (
            // biome-ignore lint/suspicious/noArrayIndexKey: a step has nothing of its own but its place
            <g key={index} aria-hidden="true" style={{ pointerEvents: 'none' }}>
              <rect
                x={frame.x(at[0]) - 8}
                y={frame.y(at[1]) - 25}
                width={16}
                height={16}
                rx={2}
                style={{ fill: 'var(--note)' }}
              />
              <text
                x={frame.x(at[0])}
                y={frame.y(at[1]) - 13}
                fontSize="12"
                fontWeight="700"
                textAnchor="middle"
                style={{ fill: 'var(--sheet)' }}
              >
                {index + 1}
              </text>
            </g>
          )
        )
      })}
      {path.map(([time, x, y], index) => (
        <Handle
          // biome-ignore lint/suspicious/noArrayIndexKey: a point has nothing of its own but its place
          key={index}
          handleKey={`path/${index}`}
          name={texts.point(index + 1)}
          value={texts.value(sayAt([x, y], system), seconds(time))}
          at={[x, y]}
          most={field.length}
          metresPerPixel={props.metresPerPixel}
          touch
          readOnly={props.readOnly}
          troubled={troubled(index)}
          actions={{
            onSelect: () => {},
            onDrag: (by) => props.onDrag(index, by),
            onDrop: () => props.onDrop(index),
            onCancel: props.onCancel,
            onStep: (steps) => props.onStep(index, steps),
            onStill: () => edit.pause(),
            onRemove: () => props.onRemove(index),
          }}
        >
          <circle cx={frame.x(x)} cy={frame.y(y)} r={13} fill="transparent" />
          <circle
            cx={frame.x(x)}
            cy={frame.y(y)}
            r={6}
            style={{ fill: 'var(--sheet)', stroke: troubled(index) ? 'var(--loss)' : 'var(--note)' }}
            strokeWidth="2.5"
          />
          <text x={frame.x(x) + 9} y={frame.y(y) + 14} fontSize="11" className="halo">
            {seconds(time)}
          </text>
        </Handle>
      ))}
    </>
  )
}
