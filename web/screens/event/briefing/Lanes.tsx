import { useId } from 'react'
import type { Game, Point } from '../../../../src/model/documents/types.ts'
import { FieldMap } from '../../../charts/FieldMap.tsx'
import { Measured } from '../../../charts/Measured.tsx'
import { words } from '../../../words/catalogue.ts'
import { nameIn } from './said.ts'

interface Lane {
  team: string
  sources: string[]
  goals: string[]
  lane: Point[]
}

/** Lines that tell ours apart without colour: whole, long strokes, dots. */
const strokes = [undefined, '14 6', '3 6']

/** The ways of ours over the field, each with its position where it begins. */
export function Lanes(props: { game: Game; jobs: readonly Lane[]; most?: number }) {
  const { game, jobs } = props
  const texts = words().briefing
  const id = useId()
  const told = jobs
    .filter(({ lane }) => lane.length > 1)
    .map(({ team, sources, goals }) => texts.laneTold(team, nameIn(game, sources[0]!), nameIn(game, goals[0]!)))
  return (
    <figure className="brief-lanes" aria-label={texts.fieldTold(told.join('; '))}>
      <Measured {...(props.most === undefined ? {} : { most: props.most })}>
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
                  const [first] = lane
                  if (!first || lane.length < 2) return null
                  return (
                    <g key={team}>
                      <path
                        d={`M${lane.map(([along, across]) => `${x(along)} ${y(across)}`).join('L')}`}
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
              </>
            )}
          />
        )}
      </Measured>
    </figure>
  )
}
