import { useId } from 'react'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'
import { seriesColour } from '../DotPlot.tsx'
import { Hatch } from '../Hatch.tsx'
import { linearScale, pixel, type Scale, ticks } from '../scale.ts'
import { logTicks, outsideOf, runsOfValues, upTo } from './gearings.ts'
import { textWidth } from './marks/Dimension.tsx'

/** One number of motors over the reductions; null: it can not do it, or it is not known (yet). */
export interface GearingLine {
  motors: number
  at: { reduction: number; seconds: number | null; current: number | null; points: number | null; within: boolean }[]
}

export interface GearingMark {
  motors: number
  reduction: number
}

const left = 46
const right = 34
const top = 18
const gap = 30
const bottom = 34
const heights = { seconds: 150, current: 90, points: 110 }
const dashes = ['', '7 4', '2 3', '9 3 2 3']

type Kind = keyof typeof heights

/**
 * Time, current and points of a mechanism over reductions, one line per number of motors, on one logarithmic axis. Hatched
 * is what the chosen number of motors can not do within the limits.
 */
export function GearingChart(props: {
  lines: GearingLine[]
  chosen: { motors: number; place: number }
  best: GearingMark | null
  flat: { low: number; high: number; share: string } | null
  now: GearingMark
  /** Most current of the source (A); null: not limited. */
  limit: number | null
  width: number
  said: string
  onChoose(place: number): void
}) {
  const { lines, chosen, best, flat, now, width } = props
  const id = useId()
  const text = words().search
  const kinds = (['seconds', 'current', 'points'] as Kind[]).filter(
    (kind) => kind !== 'points' || lines.some(({ at }) => at.some(({ points }) => points !== null)),
  )
  const row = lines.find(({ motors }) => motors === chosen.motors) ?? lines[0]!
  const reductions = row.at.map(({ reduction }) => reduction)
  const [low, high] = [reductions[0]!, reductions.at(-1)!]
  const log = linearScale([Math.log(low), Math.log(high)], [left, width - right])
  const x = (reduction: number) => pixel(log(Math.log(reduction)))
  const tops = kinds.map((_, index) => kinds.slice(0, index).reduce((sum, kind) => sum + heights[kind] + gap, top))
  const end = tops.at(-1)! + heights[kinds.at(-1)!]
  const height = end + bottom
  const choose = (clientX: number, box: DOMRect) => {
    const wanted = log.invert(((clientX - box.left) / box.width) * width)
    const off = (place: number) => Math.abs(Math.log(reductions[place]!) - wanted)
    props.onChoose(reductions.reduce((nearest, _, place) => (off(place) < off(nearest) ? place : nearest), 0))
  }
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={props.said}
      className="gearing-chart"
      onPointerDown={(event) => choose(event.clientX, event.currentTarget.getBoundingClientRect())}
      onPointerMove={(event) => {
        if (event.buttons > 0) choose(event.clientX, event.currentTarget.getBoundingClientRect())
      }}
    >
      <defs>
        <Hatch id={`${id}-hatch`} gap={7} />
      </defs>
      {kinds.map((kind, index) => (
        <Pane
          key={kind}
          {...{ kind, lines, row, x, width }}
          top={tops[index]!}
          hatch={`${id}-hatch`}
          clip={`${id}-${kind}`}
        >
          {(y) => (
            <>
              {kind === 'current' && props.limit !== null && (
                <line
                  x1={left}
                  x2={width - right}
                  y1={pixel(y(props.limit))}
                  y2={pixel(y(props.limit))}
                  style={{ stroke: 'var(--loss)' }}
                  strokeWidth="1.5"
                  strokeDasharray="6 3"
                />
              )}
              {kind === 'seconds' && best && <Best {...{ best, lines, x, y, width }} />}
              <Reading value={row.at[chosen.place]?.[kind] ?? null} x={x(reductions[chosen.place] ?? low)} y={y} />
            </>
          )}
        </Pane>
      ))}
      {now.reduction >= low && now.reduction <= high && (
        <g>
          <line
            x1={x(now.reduction)}
            x2={x(now.reduction)}
            y1={top}
            y2={end}
            style={{ stroke: 'var(--ink)' }}
            strokeDasharray="3 3"
          />
          <text x={x(now.reduction)} y={12} fontSize="12" textAnchor="middle">
            {text.markNow}
          </text>
        </g>
      )}
      {flat && <Flat {...{ ...flat, x, width }} y={tops[0]! + heights.seconds} />}
      {logTicks(low, high, Math.max(3, Math.floor((width - left) / 60))).map((tick) => (
        <text key={tick} x={x(tick)} y={end + 16} fontSize="12" textAnchor="middle" className="soft">
          {plain(tick, 2)}
        </text>
      ))}
      <text x={width - right} y={end + 31} fontSize="12" textAnchor="end" className="soft">
        {text.axis}
      </text>
    </svg>
  )
}

function Pane(props: {
  kind: Kind
  lines: GearingLine[]
  row: GearingLine
  x(reduction: number): number
  width: number
  top: number
  hatch: string
  clip: string
  children(y: Scale): React.ReactNode
}) {
  const { kind, lines, row, x, width, top: from } = props
  const text = words().search
  const height = heights[kind]
  const [least, most] = upTo(
    lines.flatMap(({ at }) => at.flatMap((each) => each[kind] ?? [])),
    kind,
  )
  const y = linearScale([least, most], [from + height, from])
  const ends = endLabels(lines, kind, (value) => Math.min(from + height, Math.max(from + 9, y(value) + 4)))
  const title = { seconds: text.time, current: text.current, points: text.points }[kind]
  return (
    <g>
      <clipPath id={props.clip}>
        <rect x={left} y={from} width={width - left - right} height={height} />
      </clipPath>
      {ticks([least, most], Math.max(2, Math.floor(height / 36))).map((tick) => (
        <g key={tick}>
          <line
            x1={left}
            x2={width - right}
            y1={pixel(y(tick))}
            y2={pixel(y(tick))}
            style={{ stroke: 'var(--rule)' }}
          />
          <text x={left - 6} y={pixel(y(tick) + 4)} fontSize="12" textAnchor="end" className="soft">
            {plain(tick, 2)}
          </text>
        </g>
      ))}
      {outsideOf(row.at).map(([low, high]) => (
        <rect
          key={low}
          x={x(low)}
          y={from}
          width={Math.max(0, x(high) - x(low))}
          height={height}
          fill={`url(#${props.hatch})`}
          opacity="0.55"
        />
      ))}
      <g clipPath={`url(#${props.clip})`}>
        {lines.map((line, index) =>
          runsOfValues(line.at, kind).map((run) => (
            <path
              key={`${line.motors} ${run[0]![0]}`}
              d={`M${run.map(([reduction, value]) => `${x(reduction)} ${pixel(y(value))}`).join('L')}`}
              fill="none"
              style={{ stroke: seriesColour(index) }}
              strokeWidth={line.motors === row.motors ? 2.75 : 1.75}
              strokeDasharray={dashes[index % 4]}
              strokeLinejoin="round"
            />
          )),
        )}
      </g>
      {ends.map(({ index, motors, reduction, at }) => (
        <text
          key={motors}
          x={x(reduction) + 5}
          y={pixel(at)}
          fontSize="12.5"
          fontWeight="700"
          className="halo"
          style={{ fill: seriesColour(index) }}
        >
          {motors}×
        </text>
      ))}
      <text x={left + 4} y={from - 5} fontSize="12.5" fontWeight="600">
        {title}
      </text>
      {props.children(y)}
    </g>
  )
}

/** Labels at the lines' right ends, moved apart upwards where they would overlap. */
function endLabels(lines: readonly GearingLine[], kind: Kind, y: (value: number) => number) {
  const labels = lines
    .flatMap(({ motors, at }, index) => {
      const last = runsOfValues(at, kind).at(-1)?.at(-1)
      return last ? [{ index, motors, reduction: last[0], at: y(last[1]) }] : []
    })
    .sort((a, b) => b.at - a.at)
  for (let k = 1; k < labels.length; k++) labels[k]!.at = Math.min(labels[k]!.at, labels[k - 1]!.at - 13)
  return labels
}

/** The middle of a text that stays between the axis and the lines' names. */
const between = (middle: number, text: string, width: number): number => {
  const half = textWidth(text) / 2
  return pixel(Math.max(left + half, Math.min(width - right - half, middle)))
}

function Best(props: {
  best: GearingMark
  lines: GearingLine[]
  x(reduction: number): number
  y: Scale
  width: number
}) {
  const { best, x, y } = props
  const line = props.lines.find(({ motors }) => motors === best.motors)
  const seconds = line?.at.find(({ reduction }) => reduction === best.reduction)?.seconds
  if (seconds === undefined || seconds === null) return null
  const [px, py] = [x(best.reduction), pixel(y(seconds))]
  return (
    <g>
      <path
        d={`M${px} ${py - 7}l7 7l-7 7l-7 -7z`}
        style={{ fill: 'var(--gain)', stroke: 'var(--sheet)' }}
        strokeWidth="1.5"
      />
      <text
        x={between(px, words().search.markBest, props.width)}
        y={py - 11}
        fontSize="12.5"
        fontWeight="700"
        textAnchor="middle"
        className="halo"
        style={{ fill: 'var(--gain)' }}
      >
        {words().search.markBest}
      </text>
    </g>
  )
}

/** A bracket at the foot of the times. */
function Flat(props: {
  low: number
  high: number
  share: string
  x(reduction: number): number
  y: number
  width: number
}) {
  const { x, y } = props
  const [from, to] = [x(props.low), x(props.high)]
  const said = words().search.markFlat(props.share)
  return (
    <g style={{ stroke: 'var(--gain)' }}>
      <path d={`M${from} ${y - 6}V${y + 4}M${to} ${y - 6}V${y + 4}`} strokeWidth="1.5" />
      <path d={`M${from} ${y - 1}H${to}`} strokeWidth="4" />
      <text
        x={between((from + to) / 2, said, props.width)}
        y={y - 10}
        className="halo"
        fontSize="12"
        textAnchor="middle"
        stroke="none"
        style={{ fill: 'var(--gain)' }}
      >
        {said}
      </text>
    </g>
  )
}

function Reading(props: { value: number | null; x: number; y: Scale }) {
  if (props.value === null) return null
  return (
    <circle
      cx={props.x}
      cy={pixel(props.y(props.value))}
      r="9"
      style={{ fill: 'none', stroke: 'var(--note)' }}
      strokeWidth="2.5"
    />
  )
}
