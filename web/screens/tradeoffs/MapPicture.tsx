import { useMemo, useState } from 'react'
import type { MapPoint } from '../../../src/model/compare/index.ts'
import type { Input } from '../../../src/model/compare/types.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { BestMap } from '../../charts/BestMap.tsx'
import { seriesLetter } from '../../charts/DotPlot.tsx'
import { type ChartTable, Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { type MapRows, mapRegions, readMap } from '../../charts/mapRegions.ts'
import { linearScale } from '../../charts/scale.ts'
import { useDebounced } from '../../data/useDebounced.ts'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { words } from '../../words/catalogue.ts'
import { percent, points, signedPoints } from '../../words/format.ts'
import { practiceOf } from '../../words/practice.ts'
import { isNothing } from '../../words/verdict.ts'
import type { MapGrid } from '../../worker/mapLevels.ts'
import { useModel } from '../../worker/useModel.ts'
import { inputAxis } from './axis.ts'
import { explainMap } from './explain.ts'

interface Shown {
  grid: MapGrid
  x: Input
  y: Input
  documents: { game: Game; options: Option[] }
  inputs: Input[]
  source: string
}

/** The map as a picture that can be read place by place, in words, and as a table. */
export function MapPicture(props: Shown) {
  const { x, y, documents, source } = props
  const { options } = documents
  const text = words().turns.map
  const rows = useMemo(() => inDays(props.grid.rows, x, y), [props.grid, x, y])
  const [across, up] = [inputAxis(x, documents), inputAxis(y, documents)]
  const likely = [shareOf(across), shareOf(up)] as const
  const [read, setRead] = useState<readonly [number, number]>(likely)
  const settled = useDebounced(read, 150)
  const exact = useExact(props, settled)
  const atLikely = useExact(props, likely) ?? readMap(rows, ...likely)
  return (
    <>
      <p>
        {summary(rows, atLikely, options)}{' '}
        <CameAbout explain={() => explainMap([x, y], { documents, likely: atLikely, source })}>
          {words().explain.opened}
        </CameAbout>
      </p>
      <Figure title={text.figure(across.name, up.name)} hideTitle table={tableOf(rows, across, up, options)}>
        <Measured drawn="map" data={props.grid}>
          {(width) => (
            <BestMap
              rows={rows}
              x={across}
              y={up}
              names={options.map(({ name }, index) => `${seriesLetter(index)} ${name}`)}
              width={Math.min(width, 720)}
              read={read}
              onRead={setRead}
            />
          )}
        </Measured>
        <p className="soft small">{options.map(({ name }, index) => `${seriesLetter(index)} ${name}`).join(' · ')}</p>
      </Figure>
      <Reading
        values={settled === read ? exact : null}
        straight={readMap(rows, ...read)}
        axes={[across, up]}
        read={read}
        onRead={setRead}
        options={options}
      />
    </>
  )
}

/** Points of every option at a place of the map (shares of its sides), planned for it; null until it is. */
function useExact({ x, y, documents, inputs }: Shown, place: readonly [number, number]): number[] | null {
  const [across, up] = place
  const { data, isPlaceholderData } = useModel(
    'mapPart',
    useMemo(() => {
      const value = (input: Input, share: number) => {
        const { low, high, back } = inputAxis(input, documents)
        return back(low + (high - low) * share)
      }
      const at: MapPoint[] = [[value(x, across), value(y, up)]]
      return { request: { ...documents, inputs }, axes: { x: x.id, y: y.id }, at }
    }, [x, y, documents, inputs, across, up]),
    true,
  )
  return isPlaceholderData ? null : (data?.[0] ?? null)
}

type Axis = ReturnType<typeof inputAxis>

const shareOf = ({ low, high, likely }: Axis): number => (high > low ? (likely - low) / (high - low) : 0.5)

/** Days rise along a side, also where the number behind them falls. */
function inDays(rows: MapRows, x: Input, y: Input): MapRows {
  const turned = practiceOf(x)?.falls ? rows.map((row) => [...row].reverse()) : rows
  return practiceOf(y)?.falls ? [...turned].reverse() : turned
}

function leader(values: readonly number[]): { best: number; lead: number } {
  const best = values.indexOf(Math.max(...values))
  return { best, lead: values[best]! - Math.max(...values.filter((_, option) => option !== best)) }
}

function summary(rows: MapRows, atLikely: readonly number[], options: readonly Option[]): string {
  const text = words().turns.map
  const unit = linearScale([0, rows.length - 1], [0, 1])
  const { shares } = mapRegions(rows, unit, unit)
  const alone = shares.findIndex((share) => share > 1 - 1e-9)
  if (alone >= 0) return text.all(options[alone]!.name)
  const parts = options.flatMap(({ name }, option) =>
    shares[option]! > 0 ? [text.share(name, percent(shares[option]!))] : [],
  )
  return `${parts.join(', ')}; ${text.atLikely(options[leader(atLikely).best]!.name)}.`
}

/** Nine values each way are enough to read aloud. */
function tableOf(rows: MapRows, across: Axis, up: Axis, options: readonly Option[]): ChartTable {
  const text = words().turns.map
  const every = Math.max(1, Math.round((rows.length - 1) / 8))
  const places = rows.flatMap((_, index) => (index % every === 0 ? [index] : []))
  const at = (axis: Axis, index: number) => axis.tick(axis.low + ((axis.high - axis.low) * index) / (rows.length - 1))
  return {
    head: [text.corner(up.name, across.name), ...places.map((i) => at(across, i))],
    rows: [...places].reverse().map((j) => [
      at(up, j),
      ...places.map((i) => {
        const { best, lead } = leader(rows[j]![i]!)
        return text.cell(options.length > 0 ? seriesLetter(best) : '', signedPoints(lead))
      }),
    ]),
  }
}

/** Two sliders move the cross over the map, by keyboard and touch; what is best there is said. */
function Reading(props: {
  /** Planned for this very place; null while it is, with what lies straight between the map's values instead. */
  values: readonly number[] | null
  straight: readonly number[]
  axes: readonly [Axis, Axis]
  read: readonly [number, number]
  onRead(place: readonly [number, number]): void
  options: readonly Option[]
}) {
  const { axes, read, options } = props
  const text = words().turns.map
  const value = (side: 0 | 1) => axes[side].low + (axes[side].high - axes[side].low) * read[side]
  const said = (side: 0 | 1) => `${axes[side].name} ${axes[side].say(value(side))}`
  const { best, lead } = leader(props.values ?? props.straight)
  return (
    <div className="stack">
      <div className="row">
        {([0, 1] as const).map((side) => (
          <label key={side} className="reading">
            {text.readX(axes[side].name)}
            <input
              type="range"
              min={0}
              max={100}
              value={Math.round(read[side] * 100)}
              aria-valuetext={axes[side].say(value(side))}
              onChange={(event) => {
                const share = Number(event.currentTarget.value) / 100
                props.onRead(side === 0 ? [share, read[1]] : [read[0], share])
              }}
            />
          </label>
        ))}
      </div>
      <p aria-live="polite">
        <strong>
          {isNothing(lead)
            ? text.even(said(0), said(1))
            : text.reads(said(0), said(1), options[best]!.name, points(lead))}
        </strong>
      </p>
      <p className="soft small">{text.touch}</p>
    </div>
  )
}
