import { Button } from '@mantine/core'
import { useEffect, useRef, useState } from 'react'
import type { QuickSheetRecord, QuickWay } from '../../../src/model/documents/quickSheet.ts'
import type { Award, Game } from '../../../src/model/documents/types.ts'
import { cellData } from '../../charts/cell.ts'
import { pointsCell } from '../../charts/cells.ts'
import { idFrom } from '../../data/identity.ts'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { words } from '../../words/catalogue.ts'
import { listed, plain, points } from '../../words/format.ts'
import type { WayAnswer } from '../../worker/protocol.ts'
import { FinishCell, NameCell, NumberCell, PlacesCell, TimeCell } from './cells.tsx'
import { explainWay } from './explainWay.ts'
import { newWay } from './newWay.ts'

const worthOf = (award: Award): string => {
  const { worth } = words().quickSheet
  return award.kind === 'each' ? worth.each(plain(award.teleop)) : worth.hold(plain(award.teleopPerSecond))
}

/** Whether finishes are asked for: the game has some, or a way still names one that it had. */
const canFinish = (game: Game, sheet: QuickSheetRecord): boolean =>
  game.finishes.length > 0 || sheet.ways.some(({ finish }) => finish !== null)

/** The one table: ways to play, one number per leg, and what they bring. */
export function WaysTable(props: {
  game: Game
  sheet: QuickSheetRecord
  revision: number
  /** At middling play, by way; undefined where it is not computed yet. */
  answers: (WayAnswer | undefined)[]
  stale: boolean
}) {
  const { game, sheet } = props
  const edit = useEdit()
  const texts = words().quickSheet.ways
  const finishes = canFinish(game, sheet)
  const heads = [
    texts.name,
    texts.sources,
    texts.goals,
    ...(finishes ? [texts.finish] : []),
    texts.load,
    texts.collect,
    texts.score,
    texts.success,
    ...(finishes ? [texts.finishing, texts.finishSuccess] : []),
    texts.extra,
  ]
  const table = useRef<HTMLTableElement>(null)
  const added = useRef(false)
  const [begun, setBegun] = useState<QuickWay | null>(null)
  const add = () => {
    added.current = true
    const way = newWay(game, texts.fresh(sheet.ways.length + 1))
    setBegun(way)
    edit.set(['ways'], [...sheet.ways, way])
  }
  // The next thing to type is the new way's name.
  useEffect(() => {
    if (!added.current) return
    added.current = false
    const name = table.current?.querySelector<HTMLInputElement>(`[data-place="ways/${sheet.ways.length - 1}/name"]`)
    name?.focus()
    name?.select()
  }, [sheet.ways.length])
  return (
    <section className="sheet stack" aria-labelledby="ways-title">
      <h2 id="ways-title">{texts.title}</h2>
      <p>{texts.how}</p>
      {sheet.ways.length === 0 ? (
        <p className="soft">{texts.none}</p>
      ) : (
        <table ref={table} className="tide quick">
          <thead>
            <tr>
              {heads.map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
              <th scope="col" className="figure">
                {texts.points}
              </th>
              <th scope="col" className="figure">
                {texts.trips}
              </th>
            </tr>
          </thead>
          <tbody>
            {sheet.ways.map((way, index) => (
              <WayRow key={way.id} {...{ ...props, way, index }} />
            ))}
          </tbody>
        </table>
      )}
      {begun && <Begun game={game} as={begun} now={sheet.ways.find(({ id }) => id === begun.id)} />}
      {!edit.readOnly && sheet.ways.length < 30 && (
        <div>
          <Button variant="default" onClick={add}>
            {texts.add}
          </Button>
        </div>
      )}
    </section>
  )
}

/** With which places a new way began, until somebody has chosen others: nothing is taken silently. */
function Begun({ game, as, now }: { game: Game; as: QuickWay; now: QuickWay | undefined }) {
  if (!now || String([now.sources, now.goals]) !== String([as.sources, as.goals])) return null
  const named = (ids: readonly string[], of: readonly { id: string; name: string }[]) =>
    listed(of.filter(({ id }) => ids.includes(id)).map(({ name }) => name))
  return (
    <p role="status" className="soft">
      {words().quickSheet.ways.begins(now.name, named(now.sources, game.sources), named(now.goals, game.goals))}
    </p>
  )
}

function WayRow(props: Parameters<typeof WaysTable>[0] & { way: QuickWay; index: number }) {
  const { game, sheet, way, index } = props
  const texts = words().quickSheet.ways
  const at = (...rest: string[]) => ['ways', index, ...rest]
  const cell = (label: string, ...rest: string[]) => ({ label, way: way.name, place: at(...rest) })
  const holds = game.goals.some(({ id, award }) => award.kind === 'hold' && way.goals.includes(id))
  const finishes = canFinish(game, sheet)
  const answer = props.answers[index]
  const result = answer && 'result' in answer ? answer.result : null
  return (
    <tr>
      <th scope="row">
        <NameCell {...cell(texts.name, 'name')} />
        <RowActs {...{ sheet, way, index }} />
      </th>
      <td>
        <PlacesCell
          {...cell(texts.sources, 'sources')}
          choices={game.sources.map(({ id, name }) => ({ id, name, worth: '' }))}
        />
      </td>
      <td>
        <PlacesCell
          {...cell(texts.goals, 'goals')}
          choices={game.goals.map(({ id, name, award }) => ({ id, name, worth: worthOf(award) }))}
          note={holds ? texts.held(plain(way.holdSeconds)) : null}
        >
          {holds && <NumberCell {...cell(texts.hold, 'holdSeconds')} rules={{ min: 0, max: 600 }} />}
        </PlacesCell>
      </td>
      {finishes && (
        <td>
          <FinishCell
            {...cell(texts.finish, 'finish')}
            choices={game.finishes.map((finish) => ({
              id: finish.id,
              name: finish.name,
              worth: plain(finish.points),
            }))}
          />
        </td>
      )}
      <td>
        <NumberCell {...cell(texts.load, 'load')} rules={{ min: 1, max: 100, whole: true }} />
      </td>
      <td>
        <TimeCell {...cell(texts.collect, 'collect')} />
      </td>
      <td>
        <TimeCell {...cell(texts.score, 'score')} />
      </td>
      <td>
        <NumberCell {...cell(texts.success, 'score', 'success')} rules={{ min: 0, max: 1, percent: true }} />
      </td>
      {finishes && (
        <>
          <td>{way.finish !== null && <TimeCell {...cell(texts.finishing, 'finishing')} />}</td>
          <td>
            {way.finish !== null && (
              <NumberCell
                {...cell(texts.finishSuccess, 'finishing', 'success')}
                rules={{ min: 0, max: 1, percent: true }}
              />
            )}
          </td>
        </>
      )}
      <td>
        <NumberCell {...cell(texts.extra, 'extra')} rules={{ min: -10_000, max: 10_000 }} />
      </td>
      <td
        className="figure result"
        style={{ opacity: props.stale ? 0.55 : 1 }}
        {...(result && cellData(pointsCell(result.points)))}
      >
        <span className="cell-label">{texts.points}</span>
        {result ? (
          <CameAbout explain={() => explainWay({ game, sheet, way, result, revision: props.revision })}>
            <strong data-testid="way-points">{points(result.points)}</strong>
          </CameAbout>
        ) : (
          '–'
        )}
      </td>
      <td className="figure result" {...(result && cellData(pointsCell(result.trips)))}>
        <span className="cell-label">{texts.trips}</span>
        {result ? points(result.trips) : '–'}
      </td>
    </tr>
  )
}

function RowActs(props: { sheet: QuickSheetRecord; way: QuickWay; index: number }) {
  const { sheet, way, index } = props
  const edit = useEdit()
  const texts = words().quickSheet.ways
  if (edit.readOnly) return null
  const copy: QuickWay = { ...way, id: idFrom(way.name), name: texts.again(way.name) }
  const before = sheet.ways.slice(0, index + 1)
  return (
    <div className="row-acts">
      <Button
        size="compact-sm"
        variant="default"
        aria-label={texts.copyOf(way.name)}
        onClick={() => edit.set(['ways'], [...before, copy, ...sheet.ways.slice(index + 1)])}
      >
        {texts.copy}
      </Button>
      <Button
        size="compact-sm"
        variant="subtle"
        aria-label={texts.removeOf(way.name)}
        onClick={() =>
          edit.set(
            ['ways'],
            sheet.ways.filter(({ id }) => id !== way.id),
          )
        }
      >
        {texts.remove}
      </Button>
    </div>
  )
}
