import type { Guess } from '../../src/model/sheet/index.ts'
import { words } from '../words/catalogue.ts'
import { plain } from '../words/format.ts'
import { linearScale, pixel, ticks } from './scale.ts'

const step = 13
const head = 46

/** Each guess as a line from low to high with a dot at likely, by likely; above them what they say together. */
export function GuessSpread(props: { guesses: readonly Guess[]; pooled: Guess; width: number }) {
  const { guesses, pooled, width } = props
  const texts = words().quickSheet.rounds
  const highest = Math.max(...guesses.map(({ high }) => high), pooled.high, 1)
  const scale = linearScale([0, highest], [8, width - 8])
  const bottom = head + guesses.length * step
  const height = bottom + 24
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`${texts.spread}: ${guesses.length}. ${texts.pooled}: ${[pooled.low, pooled.likely, pooled.high].map((value) => plain(value, 1)).join(', ')}`}
    >
      {ticks([0, highest], Math.max(3, Math.floor(width / 90))).map((tick) => (
        <g key={tick}>
          <line
            x1={pixel(scale(tick))}
            x2={pixel(scale(tick))}
            y1={head - 8}
            y2={bottom}
            style={{ stroke: 'var(--rule)' }}
          />
          <text x={pixel(scale(tick))} y={bottom + 16} fontSize="12" textAnchor="middle" className="soft">
            {tick === 0 ? '0 s' : plain(tick, 3)}
          </text>
        </g>
      ))}
      <rect
        x={pixel(scale(pooled.low))}
        width={pixel(Math.max(1, scale(pooled.high) - scale(pooled.low)))}
        y={head - 26}
        height={14}
        style={{ fill: 'var(--shoal)', stroke: 'var(--deep)' }}
      />
      <line
        x1={pixel(scale(pooled.likely))}
        x2={pixel(scale(pooled.likely))}
        y1={head - 29}
        y2={head - 9}
        style={{ stroke: 'var(--note)' }}
        strokeWidth="3"
      />
      <text x={8} y={13} fontSize="13" fontWeight="600">
        {texts.pooled}: {plain(pooled.low, 1)} · {plain(pooled.likely, 1)} · {plain(pooled.high, 1)} s
      </text>
      {guesses.map(({ low, likely, high }, index) => {
        const y = head + index * step + step / 2
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: guesses have no name, and two may be the same
          <g key={index}>
            <line
              x1={pixel(scale(low))}
              x2={pixel(scale(high))}
              y1={y}
              y2={y}
              style={{ stroke: 'var(--rule-strong)' }}
              strokeWidth="2"
            />
            <circle cx={pixel(scale(likely))} cy={y} r="4.5" style={{ fill: 'var(--deep)' }} />
          </g>
        )
      })}
    </svg>
  )
}
