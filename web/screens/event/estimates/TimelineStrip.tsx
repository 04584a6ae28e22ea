import { useMediaQuery } from '@mantine/hooks'
import type { Game } from '../../../../src/model/documents/types.ts'
import type { Happening } from '../../../../src/model/scouting/types.ts'
import { words } from '../../../words/catalogue.ts'
import { seconds } from '../../../words/format.ts'

/** Drawn for a desk and for a phone, where the same marks are as large and closer together. */
const widths = { wide: 600, narrow: 340 }
const [height, top] = [34, 6]
const row = 12

/** What begins and ends: until the end of the match where no end was noted. */
const lasting = { unseen: 'seen', stopped: 'running', defending: 'free', defended: 'released' } as const
type Lasting = keyof typeof lasting

export const matchSeconds = ({ clock }: Pick<Game, 'clock'>): number => clock.auto + clock.pause + clock.teleop

/** Each goal has a shape of its own, filled for a hit and empty for a miss: nothing depends on colour. */
export function GoalMark({ index, x, y, hit }: { index: number; x: number; y: number; hit: boolean }) {
  const name = hit ? 'strip-hit' : 'strip-miss'
  const r = 4
  if (index % 4 === 0) return <circle className={name} cx={x} cy={y} r={r} />
  if (index % 4 === 1) return <rect className={name} x={x - r} y={y - r} width={2 * r} height={2 * r} />
  const points =
    index % 4 === 2
      ? [x, y - r - 1, x + r + 1, y + r, x - r - 1, y + r]
      : [x, y - r - 1, x + r + 1, y, x, y + r + 1, x - r - 1, y]
  return <polygon className={name} points={points.join(' ')} />
}

function intervals(timeline: readonly Happening[], what: Lasting, end: number): [number, number][] {
  const all: [number, number][] = []
  let from: number | null = null
  for (const { elapsed, what: now } of timeline) {
    if (now === what) from ??= elapsed
    if (now === lasting[what] && from !== null) {
      all.push([from, elapsed])
      from = null
    }
  }
  return from === null ? all : [...all, [from, end]]
}

/** A robot's match from left to right, as a scout tapped it. */
export function TimelineStrip(props: { game: Game; timeline: readonly Happening[]; label: string }) {
  const { game, timeline, label } = props
  const texts = words().estimates
  const narrow = useMediaQuery('(max-width: 40em)', false, { getInitialValueInEffect: false })
  const width = narrow ? widths.narrow : widths.wide
  const end = matchSeconds(game)
  const x = (elapsed: number) => 4 + ((width - 8) * Math.max(0, Math.min(end, elapsed))) / end
  const goals = game.goals.map(({ id }) => id)
  const begins = game.clock.auto + game.clock.pause
  return (
    <svg className="timeline-strip" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label}>
      <rect className="strip-auto" x={x(0)} width={x(game.clock.auto) - x(0)} y={top - 4} height={2 * row + 4} />
      <line className="strip-axis" x1={x(0)} x2={x(end)} y1={top + row} y2={top + row} />
      <line className="strip-axis" x1={x(begins)} x2={x(begins)} y1={top - 4} y2={top + 2 * row} />
      {(Object.keys(lasting) as Lasting[]).flatMap((what) =>
        intervals(timeline, what, end).map(([from, to]) => (
          <rect
            key={`${what} ${from}`}
            className={`strip-${what}`}
            x={x(from)}
            width={Math.max(1, x(to) - x(from))}
            y={top + row + 6}
            height="5"
          >
            <title>{texts.lasting[what](seconds(to - from))}</title>
          </rect>
        )),
      )}
      {timeline.map(({ elapsed, what, goal, n = 1 }, index) => {
        const key = `${index} ${elapsed}`
        if (what === 'collected')
          return (
            <line key={key} className="strip-tick" x1={x(elapsed)} x2={x(elapsed)} y1={top + row} y2={top + row + 5} />
          )
        if (what === 'left')
          return <path key={key} className="strip-left" d={`M${x(elapsed)} ${top - 4} v${row + 4} l5 -3 l-5 -3`} />
        if ((what !== 'scored' && what !== 'missed') || goal === undefined) return null
        return (
          <g key={key}>
            <GoalMark index={Math.max(0, goals.indexOf(goal))} x={x(elapsed)} y={top + 4} hit={what === 'scored'} />
            {n > 1 && (
              <text x={x(elapsed) + 6} y={top + 8}>
                {n}
              </text>
            )}
          </g>
        )
      })}
    </svg>
  )
}
