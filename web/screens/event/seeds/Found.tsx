import { useEffect, useState } from 'react'
import { Link } from 'wouter'
import type { TeamSeed } from '../../../../src/model/picks/seeds/types.ts'
import { useEstimates } from '../../../data/estimates.ts'
import type { Seeds } from '../../../data/seeds.ts'
import { Empty } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { moment, percent, plain, points } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { OurMatches } from './OurMatches.tsx'
import { RankBars } from './RankBars.tsx'

/** Where 80 % of seasons end, from 1: the ranks below and above which a tenth lies. */
export function middle(ranks: readonly number[]): [low: number, high: number] {
  let [low, high] = [0, ranks.length - 1]
  for (let sum = ranks[0] ?? 0; sum < 0.1 && low < ranks.length - 1; sum += ranks[low] ?? 0) low++
  for (let sum = ranks.at(-1) ?? 0; sum < 0.1 && high > 0; sum += ranks[high] ?? 0) high--
  return [low + 1, high + 1]
}

export function Found(props: { page: EventPage; team: string; seeds: Seeds; at: Date }) {
  const { page, team, seeds, at } = props
  const { report, counted, coming, records } = seeds
  const texts = words().seeds
  const fresher = useFresher(page, at)
  const alliances = page.event.body.playoff?.alliances ?? null
  const own = report.teams.find((each) => each.team === team)
  if (coming === 0)
    return (
      <Empty title={texts.none}>
        <p>
          {texts.noneHow} <Link href={`/event/${page.event.id}/ranking`}>{texts.toRanking}</Link>
        </p>
      </Empty>
    )
  return (
    <>
      {own && (
        <>
          <p className="answer">{texts.ours(team, points(own.expected))}</p>
          <p>
            {texts.between(...middle(own.ranks))}{' '}
            {alliances !== null && texts.captain(percent(amongFirst(own, alliances)), alliances)}
          </p>
        </>
      )}
      <p className="soft">
        {texts.from(plain(report.seasons, 0), counted, coming, records)} {own && texts.error(upTo(own.error))}{' '}
        {texts.made(moment(at.toISOString()))}
      </p>
      {fresher && <p role="status">{texts.fresher}</p>}
      <h3>{texts.matches}</h3>
      <OurMatches page={page} ours={report.ours} />
      <h3>{texts.all}</h3>
      <Table seeds={ordered(report.teams, team)} us={team} alliances={alliances} />
      <p className="soft">{texts.pictureHow}</p>
    </>
  )
}

/** Ours first, then by expected rank. */
const ordered = (teams: readonly TeamSeed[], us: string): TeamSeed[] => [
  ...teams.filter(({ team }) => team === us),
  ...teams.filter(({ team }) => team !== us),
]

const amongFirst = ({ ranks }: TeamSeed, count: number): number =>
  ranks.slice(0, count).reduce((sum, chance) => sum + chance, 0)

/** An error to 0.1, rounded up. */
export const upTo = (error: number): string => points(Math.ceil(error * 10 - 1e-9) / 10)

/** Whether what is known of the event changed after the numbers were made: they are not changed under a reader's eyes. */
function useFresher({ event, results }: EventPage, at: Date): boolean {
  const { dataUpdatedAt, data } = useEstimates(event.id)
  const [first, setFirst] = useState<{ at: Date; state: string } | null>(null)
  const known = results.filter(({ result }) => result).map(({ match, revision }) => [match, revision])
  const state = data ? JSON.stringify([data.records, known]) : null
  useEffect(() => {
    if (state !== null && first?.at !== at && dataUpdatedAt > 0) setFirst({ at, state })
  }, [state, at, first, dataUpdatedAt])
  return first !== null && first.at === at && state !== null && first.state !== state
}

function Table(props: { seeds: readonly TeamSeed[]; us: string; alliances: number | null }) {
  const { seeds, us, alliances } = props
  const texts = words().seeds
  return (
    <div className="scroll" tabIndex={0} role="region" aria-label={texts.all}>
      <table className="tide seeds-table">
        <thead>
          <tr>
            <th scope="col">{words().event.ranking.team}</th>
            <th scope="col" className="figure">
              {texts.expected}
            </th>
            {alliances !== null && (
              <th scope="col" className="figure">
                {texts.first(alliances)}
              </th>
            )}
            <th scope="col">{texts.where}</th>
          </tr>
        </thead>
        <tbody>
          {seeds.map((seed) => (
            <tr key={seed.team} className={seed.team === us ? 'is-ours' : undefined}>
              <th scope="row">{seed.team}</th>
              <td className="figure">{points(seed.expected)}</td>
              {alliances !== null && <td className="figure">{percent(amongFirst(seed, alliances))}</td>}
              <td>
                <RankBars ranks={seed.ranks} label={texts.picture(seed.team, ...middle(seed.ranks))} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
