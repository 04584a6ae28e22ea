import { NativeSelect } from '@mantine/core'
import { useQueries } from '@tanstack/react-query'
import { useState } from 'react'
import type { PieceWorth } from '../../../src/model/compare/index.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { pointsCell, secondsCell } from '../../charts/cells.ts'
import { seriesLetter } from '../../charts/DotPlot.tsx'
import { Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { type WorthLine, WorthLines } from '../../charts/WorthLines.tsx'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { Fold } from '../../shell/parts/Fold.tsx'
import { Loading } from '../../shell/states.tsx'
import { spotName } from '../../words/actions.ts'
import { words } from '../../words/catalogue.ts'
import { points, seconds } from '../../words/format.ts'
import { askModel } from '../../worker/client.ts'
import { explainPiece } from './explain.ts'

/** Spots at which an option collects, in the order of the game. */
export function collectSpots(game: Game, options: readonly Option[]): string[] {
  return game.sources
    .filter(({ id }) => options.some((option) => collects(option, id)))
    .flatMap(({ spots }) => spots.map(({ id }) => id))
}

const collects = ({ role, robot }: Option, source: string): boolean =>
  role.sources.includes(source) && robot.collect[source] !== undefined

/** What one more piece in hand is worth against time left, for every option that collects at the chosen spot. */
export function PieceWorths(props: { game: Game; options: Option[]; source: string; ready: boolean }) {
  const { game, source } = props
  const text = words().tradeoffs.piece
  const spots = collectSpots(game, props.options)
  const [chosen, setChosen] = useState<string | null>(null)
  const spot = spots.find((id) => id === chosen) ?? spots[0]
  const place = game.sources.find(({ spots: own }) => own.some(({ id }) => id === spot))
  const options = props.options.flatMap((option, index) =>
    place && collects(option, place.id) ? [{ option, index }] : [],
  )
  const found = useQueries({
    queries: options.map(({ option }) => ({
      queryKey: ['model', 'pieceWorth', { game, option, spot }],
      queryFn: ({ signal }: { signal: AbortSignal }) =>
        askModel('pieceWorth', { game, option, spot: spot! }, { signal }),
      enabled: props.ready,
      staleTime: Number.POSITIVE_INFINITY,
      retry: false,
    })),
    combine: (queries) => ({
      data: queries.map(({ data }) => data ?? null),
      error: queries.find(({ error }) => error)?.error ?? null,
    }),
  })
  if (!spot) return null
  const known = options.flatMap((entry, index) => {
    const worth = found.data[index]
    return worth ? [{ ...entry, worth }] : []
  })
  return (
    <section className="sheet stack" aria-labelledby="piece-title">
      <Fold id="piece-title" title={text.title}>
        <p>{text.how}</p>
        <NativeSelect
          label={text.where}
          maw={360}
          value={spot}
          data={spots.map((id) => ({ value: id, label: spotName(game, id) }))}
          onChange={(event) => setChosen(event.currentTarget.value)}
        />
        {found.error && <p role="alert">{found.error.message}</p>}
        {known.length < options.length && !found.error && <Loading what={text.loading} />}
        {known.length > 0 && <Known known={known} place={spotName(game, spot)} data={found.data} source={source} />}
      </Fold>
    </section>
  )
}

interface Entry {
  option: Option
  index: number
  worth: PieceWorth
}

const linesOf = (known: readonly Entry[]): WorthLine[] =>
  known.flatMap(({ option, index, worth }) =>
    worth.loads.map(({ from, to, at }, dash) => ({
      id: `${option.id}/${to}`,
      name:
        worth.loads.length > 1
          ? words().tradeoffs.piece.load(option.name, from, to)
          : words().tradeoffs.piece.first(option.name),
      index,
      dash,
      at,
    })),
  )

function Known(props: { known: Entry[]; place: string; data: unknown; source: string }) {
  const { known, place, source } = props
  const text = words().tradeoffs.piece
  const lines = linesOf(known)
  const times = lines[0]!.at.map(([time]) => time).filter((time) => time % 5 === 0)
  return (
    <>
      <ul className="facts">
        {known.map(({ option, index, worth }) => (
          <li key={option.id}>
            {seriesLetter(index)} {ending(option, worth)}{' '}
            <CameAbout explain={() => explainPiece(option, worth, source)}>{words().explain.opened}</CameAbout>
          </li>
        ))}
      </ul>
      <Figure
        title={text.figure(place)}
        table={{
          head: [text.left, ...lines.map(({ name }) => name)],
          rows: [...times]
            .reverse()
            .map((time) => [
              secondsCell(time),
              ...lines.map(({ at }) => pointsCell(at.find(([left]) => left === time)?.[1] ?? 0)),
            ]),
        }}
      >
        <Measured drawn="piece" data={props.data}>
          {(width) => <WorthLines lines={lines} width={width} />}
        </Measured>
        <p className="soft small">
          {known.map(({ option, index }) => `${seriesLetter(index)} ${option.name}`).join(' · ')}
        </p>
      </Figure>
    </>
  )
}

/** From when on a piece is worth nothing, and what it is typically worth with most of the match still to come. */
function ending({ name }: Option, { loads }: PieceWorth): string {
  const text = words().tradeoffs.piece
  const { at } = loads[0]!
  const first = at.find(([, value]) => value >= 0.05)
  const late = at.slice(Math.floor(at.length * 0.5))
  const typical = late.reduce((sum, [, value]) => sum + value, 0) / late.length
  return `${text.until(name, seconds(first?.[0] ?? at.at(-1)![0]))}; ${text.typical(points(typical))}.`
}
