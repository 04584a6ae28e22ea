import { Button, NativeSelect, Progress } from '@mantine/core'
import { useEffect, useMemo, useRef, useState } from 'react'
import type { Input } from '../../../src/model/compare/types.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { Fold } from '../../shell/parts/Fold.tsx'
import { words } from '../../words/catalogue.ts'
import { percent } from '../../words/format.ts'
import { inputWords } from '../../words/inputs.ts'
import { computeMap } from '../../worker/map.ts'
import type { MapGrid } from '../../worker/mapLevels.ts'
import { MapPicture } from './MapPicture.tsx'

/** A map over two unknowns, drawn on request: long work, which grows finer as it goes and can be stopped. */
export function TwoUnknowns(props: {
  documents: { game: Game; options: Option[] }
  inputs: Input[]
  /** What is put on the sides at first: the unknown of the break-even, and the next that turns or swings most. */
  first: readonly string[]
  source: string
}) {
  const { documents, inputs } = props
  const text = words().turns.map
  const [chosen, setChosen] = useState<{ x?: string; y?: string }>({})
  const byId = (id: string | undefined) => inputs.find((input) => input.id === id)
  const order = [...props.first.flatMap((id) => byId(id) ?? []), ...inputs]
  const x = byId(chosen.x) ?? order[0]
  const y = byId(chosen.y) ?? order.find(({ id }) => id !== x?.id)
  if (documents.options.length < 2) return null
  if (!x || !y)
    return (
      <section className="sheet stack" aria-labelledby="map-title">
        <Fold id="map-title" title={text.title}>
          <p>{text.few}</p>
        </Fold>
      </section>
    )
  const choices = inputs.map((input) => ({ value: input.id, label: inputWords(input, documents).name }))
  return (
    <section className="sheet stack" aria-labelledby="map-title">
      <Fold id="map-title" title={text.title}>
        <p>{text.how}</p>
        <div className="row" style={{ alignItems: 'start' }}>
          <NativeSelect
            label={text.x}
            maw="100%"
            value={x.id}
            data={choices}
            onChange={(event) => setChosen({ x: event.currentTarget.value, y: y.id })}
          />
          <NativeSelect
            label={text.y}
            maw="100%"
            value={y.id}
            data={choices}
            error={x.id === y.id ? text.two : null}
            onChange={(event) => setChosen({ x: x.id, y: event.currentTarget.value })}
          />
        </div>
        {x.id !== y.id && <Drawing {...props} x={x} y={y} />}
      </Fold>
    </section>
  )
}

function Drawing(props: {
  documents: { game: Game; options: Option[] }
  inputs: Input[]
  x: Input
  y: Input
  source: string
}) {
  const { documents, inputs, x, y } = props
  const text = words().turns.map
  const key = useMemo(() => JSON.stringify([documents, inputs, x.id, y.id]), [documents, inputs, x.id, y.id])
  const [found, setFound] = useState<{ of: string; grid: MapGrid; step: number } | null>(null)
  const [share, setShare] = useState<number | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const stop = useRef<AbortController | null>(null)
  // A map of other numbers is of no use any more.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key is what it follows
  useEffect(() => () => stop.current?.abort(), [key])
  const start = async () => {
    const controller = new AbortController()
    stop.current = controller
    let any = found?.of === key
    setShare(0)
    setTrouble(null)
    try {
      await computeMap(
        { ...documents, inputs },
        { x: x.id, y: y.id },
        {
          signal: controller.signal,
          progress: setShare,
          grown: (grid, step) => {
            any = true
            setFound({ of: key, grid, step })
          },
        },
      )
    } catch (error) {
      setTrouble(controller.signal.aborted ? (any ? text.stoppedLast : text.stopped) : (error as Error).message)
      controller.abort()
    } finally {
      setShare(null)
    }
  }
  const current = found?.of === key ? found : null
  return (
    <div className="stack">
      <div className="row">
        {share === null ? (
          <Button variant="default" onClick={() => void start()}>
            {current ? text.again : text.draw}
          </Button>
        ) : (
          <Button variant="default" onClick={() => stop.current?.abort()}>
            {text.stop}
          </Button>
        )}
        {current && (
          <span className="soft small">
            {current.step === 1 ? text.fine((current.grid.size + 1) / 2) : text.grain(current.grid.size)}
          </span>
        )}
      </div>
      {share !== null && (
        <div role="status">
          <p>{text.drawing(percent(share))}</p>
          <Progress value={share * 100} color="var(--deep)" aria-label={text.progress} />
        </div>
      )}
      {trouble && <p role="status">{trouble}</p>}
      {current ? (
        <MapPicture grid={current.grid} x={x} y={y} documents={documents} inputs={inputs} source={props.source} />
      ) : (
        share === null && <p>{text.none}</p>
      )}
    </div>
  )
}
