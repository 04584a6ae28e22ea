import { useId } from 'react'
import type { Game, Point } from '../../../../src/model/documents/types.ts'
import { type FieldFrame, FieldMap } from '../../../charts/FieldMap.tsx'
import { Measured } from '../../../charts/Measured.tsx'
import { words } from '../../../words/catalogue.ts'
import { placeLabels } from './labels.ts'
import { nameIn } from './said.ts'

interface Lane {
  team: string
  sources: string[]
  goals: string[]
  finish: string | null
  lane: Point[]
}

/** Lines that tell ours apart without colour: whole, long strokes, dots. */
const strokes = [undefined, '14 6', '3 6']

const placesOf = ({ sources, goals, finishes }: Game) => [...sources, ...goals, ...finishes]

/** The point of a way that has so much of its length behind it; null for none. */
function along(lane: readonly Point[], share: number): Point | null {
  const lengths = lane.slice(1).map(([x, y], k) => Math.hypot(x - lane[k]![0], y - lane[k]![1]))
  let left = share * lengths.reduce((sum, length) => sum + length, 0)
  for (const [k, length] of lengths.entries()) {
    if (left <= length && length > 0) {
      const [from, to] = [lane[k]!, lane[k + 1]!]
      return [from[0] + (left / length) * (to[0] - from[0]), from[1] + (left / length) * (to[1] - from[1])]
    }
    left -= length
  }
  return null
}

/** Ways that begin at one place carry their numbers apart. */
const numberAt = (lane: readonly Point[], index: number) => along(lane, 0.3 + 0.2 * index)

/** Letters of names (px). */
const size = 14

/** The ways of ours over the field, each with its position where it begins. */
export function Lanes(props: { game: Game; jobs: readonly Lane[]; most?: number }) {
  const { game, jobs } = props
  const texts = words().briefing
  const id = useId()
  /** Circles that no name should cover: numbers, and spots of places. */
  const drawnAt = ({ x, y }: Pick<FieldFrame, 'x' | 'y'>) => [
    ...jobs.flatMap(({ lane }, index) => {
      const at = numberAt(lane, index)
      return at ? [{ x: x(at[0]), y: y(at[1]), radius: 13 }] : []
    }),
    ...placesOf(game).flatMap(({ spots }) => spots.map(({ at }) => ({ x: x(at[0]), y: y(at[1]), radius: 8 }))),
  ]
  const used = new Set(jobs.flatMap(({ sources, goals, finish }) => [sources[0], goals[0], finish]))
  const told = jobs
    .filter(({ lane }) => lane.length > 1)
    .map(({ team, sources, goals }) => texts.laneTold(team, nameIn(game, sources[0]!), nameIn(game, goals[0]!)))
  return (
    <figure className="brief-lanes" aria-label={texts.fieldTold(told.join('; '))}>
      <Measured drawn="lanes" data={jobs} {...(props.most === undefined ? {} : { most: props.most })}>
        {(width) => (
          <FieldMap
            game={game}
            width={width}
            name={texts.fieldTold(told.join('; '))}
            over={({ x, y }) => (
              <>
                <defs>
                  <marker
                    id={`${id}tip`}
                    viewBox="0 0 10 10"
                    refX="8"
                    refY="5"
                    markerWidth="5"
                    markerHeight="5"
                    orient="auto"
                  >
                    <path d="M0 0L10 5L0 10z" />
                  </marker>
                </defs>
                {jobs.map(({ team, lane }, index) => {
                  const first = numberAt(lane, index)
                  if (!first) return null
                  return (
                    <g key={team}>
                      <path
                        d={`M${lane.map(([far, across]) => `${x(far)} ${y(across)}`).join('L')}`}
                        fill="none"
                        style={{ stroke: 'var(--ink)' }}
                        strokeWidth="3.5"
                        strokeDasharray={strokes[index]}
                        markerEnd={`url(#${id}tip)`}
                      />
                      <circle cx={x(first[0])} cy={y(first[1])} r={12} style={{ fill: 'var(--ink)' }} />
                      <text
                        x={x(first[0])}
                        y={y(first[1]) + 5}
                        fontSize="15"
                        fontWeight="700"
                        textAnchor="middle"
                        style={{ fill: 'var(--sheet)' }}
                      >
                        {index + 1}
                      </text>
                    </g>
                  )
                })}
                {placeLabels(
                  placesOf(game).flatMap(({ id: place, name, spots: [first] }) =>
                    used.has(place) && first ? [{ text: name, x: x(first.at[0]), y: y(first.at[1]) }] : [],
                  ),
                  { width, height: y(0) + 30, size, drawn: drawnAt({ x, y }) },
                ).map(({ text, ...at }) => (
                  <text key={text} {...at} fontSize={size} fontWeight="700" className="halo" textAnchor="middle">
                    {text}
                  </text>
                ))}
              </>
            )}
          >
            {({ x, y }) =>
              placesOf(game).map(({ id: place, spots }) =>
                spots.map(({ id: spot, at }) => (
                  <g key={spot}>
                    <circle
                      cx={x(at[0])}
                      cy={y(at[1])}
                      r={7}
                      style={{ fill: 'var(--sheet)', stroke: 'var(--ink)' }}
                      strokeWidth={used.has(place) ? 3 : 1}
                    />
                  </g>
                )),
              )
            }
          </FieldMap>
        )}
      </Measured>
    </figure>
  )
}
