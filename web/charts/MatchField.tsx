import { useId } from 'react'
import type { Game, Point } from '../../src/model/documents/types.ts'
import { symmetricImage } from '../../src/model/field/symmetry.ts'
import { memoWords } from '../words/memo.tsx'
import { FieldMap, frameOf } from './FieldMap.tsx'
import { type Side, SidePattern, sideColour } from './RobotSign.tsx'
import { pixel } from './scale.ts'

export interface DrawnRobot {
  sign: string
  side: Side
  /** On the field as ours see it (m). */
  at: Point
  length: number
  /** With a broken outline: it did not come, or does not move again. */
  out: boolean
  /** Waits for something. */
  waits: boolean
  load: number
}

/** Least size of a robot (px), so that its letters can be read. */
const least = 22

/** The field with all robots of a match at one moment; `told` says the same in words. */
export function MatchField(props: { game: Game; width: number; robots: DrawnRobot[]; told: string }) {
  const { game, width, robots } = props
  const id = useId()
  const { x, y, metre, height } = frameOf(game.field, width)
  return (
    <div className="match-field">
      <Ground game={game} width={width} />
      <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={props.told}>
        <defs>
          <SidePattern id={id} />
        </defs>
        {robots.map(({ sign, side, at, length, out, waits, load }) => {
          const size = Math.max(least, length * metre)
          const box = {
            x: pixel(-size / 2),
            y: pixel(-size / 2),
            width: pixel(size),
            height: pixel(size),
            rx: side === 'ours' ? 0 : pixel(size / 3),
          }
          return (
            <g key={sign} transform={`translate(${x(at[0])} ${y(at[1])})`}>
              <rect
                {...box}
                style={{ fill: 'var(--sheet)', stroke: sideColour(side) }}
                strokeWidth="2.5"
                strokeDasharray={out ? '3 3' : undefined}
              />
              {side === 'theirs' && <rect {...box} fill={`url(#${id})`} />}
              <text y="4.5" fontSize="13" fontWeight="700" textAnchor="middle" className="halo">
                {sign}
              </text>
              {Array.from({ length: Math.min(6, load) }, (_, piece) => (
                <circle
                  // biome-ignore lint/suspicious/noArrayIndexKey: a piece has nothing of its own but its place in the row
                  key={piece}
                  cx={pixel(-size / 2 + 4 + piece * 7)}
                  cy={pixel(-size / 2 - 5)}
                  r={3}
                  style={{ fill: 'var(--note)', stroke: 'var(--sheet)' }}
                />
              ))}
              {waits && (
                <text x={pixel(size / 2 - 2)} y={pixel(-size / 2 - 1)} fontSize="15" fontWeight="700" className="halo">
                  …
                </text>
              )}
            </g>
          )
        })}
      </svg>
    </div>
  )
}

/** What stands still is drawn once, with the places of the other alliance as their images. */
const Ground = memoWords(function Ground({ game, width }: { game: Game; width: number }) {
  const places = [...game.sources, ...game.goals, ...game.finishes]
  return (
    <FieldMap
      game={game}
      width={width}
      under={({ x, y }) =>
        places.flatMap(({ spots }) =>
          spots.map((spot) => {
            const [along, across] = symmetricImage(game.field, spot.at)
            return (
              <circle
                key={spot.id}
                cx={x(along)}
                cy={y(across)}
                r={7}
                fill="none"
                style={{ stroke: 'var(--rule-strong)' }}
                strokeDasharray="3 2"
              />
            )
          }),
        )
      }
    />
  )
})
