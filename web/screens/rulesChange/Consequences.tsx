import { useQueries } from '@tanstack/react-query'
import { Link } from 'wouter'
import type { CompareReport } from '../../../src/model/compare/types.ts'
import type { Game } from '../../../src/model/documents/types.ts'
import { same } from '../../data/difference.ts'
import { type Stored, useAllStored, useList } from '../../data/documents.ts'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { Loading, Trouble } from '../../shell/states.tsx'
import { TableDownload } from '../../shell/TableDownload.tsx'
import { words } from '../../words/catalogue.ts'
import { explainLead } from '../../words/explain.ts'
import { points, signedPoints } from '../../words/format.ts'
import { isLevel, isNothing, optionName, verdict } from '../../words/verdict.ts'
import { askModel } from '../../worker/client.ts'
import { consequencesTable } from './consequencesTable.ts'
import { consequence, type Standing } from './flips.ts'

/** Every stored decision of the game, computed again under the rules given. */
export function Consequences(props: { game: Game }) {
  const { game } = props
  const texts = words().rulesChange
  const list = useList('decision')
  const all = useAllStored('decision', list.data ?? [])
  const own = (list.data ? (all.data ?? []) : []).filter(({ body }) => body.snapshot.game.id === game.id)
  const computed = useQueries({
    queries: own.map(({ body }) => {
      const request = { game, options: body.snapshot.options }
      return {
        queryKey: ['model', 'compare', { request }],
        queryFn: ({ signal }: { signal: AbortSignal }) => askModel('compare', { request }, { signal }),
        staleTime: Number.POSITIVE_INFINITY,
        retry: false,
      }
    }),
  })
  const error = list.error ?? all.error
  if (error) return <Trouble title={texts.notLoaded} error={error} retry={all.refetch} />
  if (!list.data || (list.data.length > 0 && !all.data)) return <Loading what={texts.loading} />
  if (own.length === 0) return <p>{texts.none}</p>
  const found = own.map((decision, index) => {
    const { data, error: failed } = computed[index]!
    return { decision, error: failed, now: data ?? null, result: data ? consequence(decision.body, data) : null }
  })
  const complete = found.every(({ result }) => result !== null)
  const flipped = found.filter(({ result }) => result?.flips).length
  return (
    <>
      <p role="status">
        <strong>{complete ? texts.summary(flipped, found.length) : ''}</strong>
      </p>
      <div className="scroll">
        <table className="tide">
          <caption className="visually-hidden">{texts.caption}</caption>
          <thead>
            <tr>
              <th scope="col">{texts.decision}</th>
              <th scope="col">{texts.before}</th>
              <th scope="col">{texts.after}</th>
              <th scope="col">{texts.verdict}</th>
            </tr>
          </thead>
          <tbody>
            {found.map((row) => (
              <Row key={row.decision.id} game={game} {...row} />
            ))}
          </tbody>
        </table>
      </div>
      {complete && <TableDownload title={texts.caption} table={() => consequencesTable(found, texts.caption)} />}
    </>
  )
}

function Row(props: {
  game: Game
  decision: Stored<'decision'>
  error: Error | null
  now: CompareReport | null
  result: ReturnType<typeof consequence> | null
}) {
  const { decision, result, error } = props
  const { options, game } = decision.body.snapshot
  const texts = words().rulesChange
  const source = words().explain.kept(decision.name, decision.revision)
  const cell = ({ best, lead }: Standing, report: CompareReport, from: string) => (
    <>
      {optionName(options, best)}
      {lead !== null && (
        <div className="soft small">
          {texts.difference}{' '}
          <CameAbout explain={() => explainLead(report, options, verdict(report)!, from)}>
            {signedPoints(lead)}
          </CameAbout>
        </div>
      )}
    </>
  )
  return (
    <tr>
      <th scope="row">
        <Link href={`/decisions/${decision.id}`}>{decision.name}</Link>
        {same(game, props.game) && <div className="soft small">{texts.same}</div>}
        {(decision.body.snapshot.objective ?? 'points') !== 'points' && (
          <div className="soft small">{words().objective.record.again}</div>
        )}
      </th>
      {result && props.now ? (
        <>
          <td>{cell(result.before, decision.body.snapshot.result, source)}</td>
          <td>{cell(result.after, props.now, `${source} ${texts.under(props.game.name)}`)}</td>
          <td>
            <strong className={result.flips ? 'loss' : undefined}>
              {result.flips ? texts.flips : isLevel(result.after) ? texts.level : texts.stays}
            </strong>
            {!isNothing(result.chosenBehind) && (
              <div className="small">
                {texts.chosenNow(optionName(options, decision.body.chosen), points(result.chosenBehind))}
              </div>
            )}
          </td>
        </>
      ) : (
        <td colSpan={3}>{error ? `${texts.notComputed}: ${error.message}` : texts.computing}</td>
      )}
    </tr>
  )
}
