import { Link } from 'wouter'
import type { Game } from '../../../../src/model/documents/types.ts'
import type { Estimate, TeamEstimate } from '../../../../src/model/scouting/estimates/types.ts'
import { type Estimates, type TeamKnown, useTeamKnown, type WatchedMatch } from '../../../data/estimates.ts'
import { Empty, Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { listed, percent, plain, points, seconds } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { matchName } from '../names.ts'
import { Interval } from './Interval.tsx'
import { GoalMark, TimelineStrip } from './TimelineStrip.tsx'

/** One team: its matches first, then what follows from them beside what it says of itself. */
export function TeamPart({ page, team, all }: { page: EventPage; team: string; all: Estimates | undefined }) {
  const texts = words().estimates
  const known = useTeamKnown(page.event.id, team)
  const name = page.event.body.teams.find((each) => each.team === team)?.name
  const back = <Link href={`/event/${page.event.id}/estimates`}>{texts.allTeams}</Link>
  if (known.error && !known.data)
    return (
      <>
        {back}
        <Trouble title={texts.troubleOf(team)} error={known.error} retry={() => void known.refetch()} />
      </>
    )
  if (!known.data) return <Loading what={texts.whatOf(team)} />
  const { data } = known
  return (
    <section className="stack" aria-labelledby="team">
      <p className="small no-print">{back}</p>
      <div className="sheet stack">
        <h2 id="team">{texts.teamTitle(team, name ?? '')}</h2>
        <Matches page={page} watched={data.watched} />
      </div>
      <Rows game={page.game} known={data} />
      <Numbers of={data.estimate} game={page.game} all={all?.teams ?? [data.estimate]} />
    </section>
  )
}

function Legend({ game }: { game: Game }) {
  const texts = words().estimates
  return (
    <ul className="strip-legend">
      {game.goals.map(({ id, name }, index) => (
        <li key={id}>
          <svg viewBox="0 0 12 12" aria-hidden="true">
            <GoalMark index={index} x={6} y={6} hit />
          </svg>
          {name}
        </li>
      ))}
      <li>
        <svg viewBox="0 0 12 12" aria-hidden="true">
          <GoalMark index={0} x={6} y={6} hit={false} />
        </svg>
        {texts.emptyIsMiss}
      </li>
      <li>{texts.ticks}</li>
    </ul>
  )
}

function Matches({ page, watched }: { page: EventPage; watched: readonly WatchedMatch[] }) {
  const texts = words().estimates
  const { game, schedule } = page
  const matches = new Map(schedule.matches.map(({ match }) => [match.id, match]))
  const people = new Map(page.watching.people.map(({ id, nickname }) => [id, nickname]))
  const goalName = (id: string) => game.goals.find((goal) => goal.id === id)?.name ?? id
  if (watched.length === 0)
    return (
      <Empty title={texts.notWatched}>
        <p>{texts.notWatchedHow}</p>
      </Empty>
    )
  const named = (id: string) => {
    const match = matches.get(id)
    return match ? matchName(match) : id
  }
  const finishName = (id: string) => game.finishes.find((finish) => finish.id === id)?.name ?? id
  return (
    <>
      <Legend game={game} />
      <ol className="strips">
        {watched.map((each) => {
          const scored = Object.entries(each.scored).map(([goal, n]) => texts.piecesAt(plain(n, 1), goalName(goal)))
          const told = [
            ...(each.absent ? [texts.absent] : scored.length > 0 ? scored : [texts.nothingScored]),
            ...(each.missed > 0 ? [texts.missed(plain(each.missed, 1))] : []),
            ...(each.finish ? [finishName(each.finish)] : []),
          ]
          const scouts = each.records.map(({ scout, counts }) => {
            const who = people.get(scout) ?? scout
            return counts ? who : texts.setAside(who)
          })
          return (
            <li key={each.match}>
              <p>
                <strong>{named(each.match)}</strong> <span className="soft">{texts.by(listed(scouts))}</span>
              </p>
              {each.timeline.length > 0 && (
                <TimelineStrip
                  game={game}
                  timeline={each.timeline}
                  label={texts.stripOf(named(each.match), told.join(', '))}
                />
              )}
              <p className="small">{told.join(', ')}</p>
            </li>
          )
        })}
      </ol>
    </>
  )
}

/** Claimed and watched, one under the other, goal by goal: where they disagree, both stay to be seen. */
function Rows({ game, known }: { game: Game; known: TeamKnown }) {
  const texts = words().estimates
  const { estimate, claims } = known
  const goals = game.goals.filter(({ id }) => estimate.goals[id])
  const claim = claims.at(-1)?.claims
  const seen = known.watched.filter(({ absent }) => !absent)
  const average = (goal: string) => seen.reduce((sum, { scored }) => sum + (scored[goal] ?? 0), 0) / seen.length
  return (
    <div className="sheet stack">
      <h3>{texts.sources}</h3>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.sources}>
        <table className="tide">
          <thead>
            <tr>
              <th scope="col">{texts.piecesAMatch}</th>
              {goals.map(({ id, name }) => (
                <th key={id} scope="col" className="figure">
                  {name}
                </th>
              ))}
              <th scope="col" className="figure">
                {texts.columns.trip}
              </th>
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">{texts.claimed}</th>
              {goals.map(({ id }) => (
                <td key={id} className="figure">
                  {claim?.goals?.[id] === undefined ? '–' : plain(claim.goals[id], 1)}
                </td>
              ))}
              <td className="figure">{claim?.cycle === undefined ? '–' : seconds(claim.cycle)}</td>
            </tr>
            <tr>
              <th scope="row">{texts.watched(seen.length)}</th>
              {goals.map(({ id }) => (
                <td key={id} className="figure">
                  {seen.length === 0 ? '–' : points(average(id))}
                </td>
              ))}
              <td className="figure">–</td>
            </tr>
            <tr>
              <th scope="row">{texts.believed}</th>
              {goals.map(({ id }) => {
                const { placed } = estimate.goals[id]!
                return (
                  <td key={id} className="figure">
                    {points(placed.mean)}
                    <span className="slot-mark">{between(placed, points)}</span>
                  </td>
                )
              })}
              <td className="figure">
                {estimate.trip ? seconds(estimate.trip.median.mean) : '–'}
                {estimate.trip && <span className="slot-mark">{between(estimate.trip.median, seconds)}</span>}
              </td>
            </tr>
          </tbody>
        </table>
      </div>
      <p className="soft">{texts.sourcesHow}</p>
      <Solved known={known} />
    </div>
  )
}

/** What the officials' totals say of the team alone, beside what its records say. */
function Solved({ known: { solved, estimate } }: { known: TeamKnown }) {
  const texts = words().estimates
  const told = (['autonomous', 'goals', 'finishes'] as const).flatMap((category) => {
    const own = solved[category]
    return own ? [{ category, own }] : []
  })
  if (told.length === 0) return <p className="soft">{texts.notSolved}</p>
  const of = { autonomous: estimate.autonomousPoints, goals: estimate.points, finishes: estimate.finishPoints }
  return (
    <>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.pointsAMatch}>
        <table className="tide">
          <thead>
            <tr>
              <th scope="col">{texts.pointsAMatch}</th>
              {told.map(({ category }) => (
                <th key={category} scope="col" className="figure">
                  {texts.categories[category]}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">{texts.believed}</th>
              {told.map(({ category }) => (
                <td key={category} className="figure">
                  {points(of[category].mean)}
                  <span className="slot-mark">{between(of[category], points)}</span>
                </td>
              ))}
            </tr>
            <tr>
              <th scope="row">{texts.solved(told[0]!.own.totals)}</th>
              {told.map(({ category, own }) => (
                <td key={category} className="figure">
                  {points(own.mean)}
                  <span className="slot-mark">{between(own, points)}</span>
                </td>
              ))}
            </tr>
          </tbody>
        </table>
      </div>
      <p className="soft">{texts.solvedHow}</p>
    </>
  )
}

const between = (
  { interval80: [low, high] }: Pick<Estimate, 'interval80'>,
  written: (value: number) => string,
): string => words().estimates.between(written(low), written(high))

function Numbers({ of, game, all }: { of: TeamEstimate; game: Game; all: readonly TeamEstimate[] }) {
  const texts = words().estimates
  const count = points
  const finishName = (id: string) =>
    id === 'none' ? texts.noFinish : (game.finishes.find((finish) => finish.id === id)?.name ?? id)
  const rows: { name: string; estimate: Estimate; written: (value: number) => string; most: number }[] = [
    ...(['points', 'attempts', 'finishPoints', 'autonomousPoints'] as const).map((what) => ({
      name: texts.columns[what],
      estimate: of[what],
      written: count,
      most: Math.max(...all.map((team) => (team[what].next80 ?? team[what].interval95)[1])),
    })),
    ...Object.entries(of.finish).map(([id, estimate]) => ({
      name: texts.chanceOf(finishName(id)),
      estimate,
      written: percent,
      most: 1,
    })),
    ...(['leaves', 'stops', 'absent'] as const).map((what) => ({
      name: texts.chances[what],
      estimate: of[what],
      written: percent,
      most: 1,
    })),
  ]
  return (
    <div className="sheet stack">
      <h3>{texts.numbers}</h3>
      {of.neverSeen && <p>{texts.neverSeenHow}</p>}
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.numbers}>
        <table className="tide estimates-table">
          <thead>
            <tr>
              <th scope="col">{texts.quantity}</th>
              <th scope="col" className="figure">
                {texts.expected}
              </th>
              <th scope="col" className="figure">
                {texts.in80}
              </th>
              <th scope="col" className="figure">
                {texts.nextMatch}
              </th>
              <th scope="col" className="figure">
                {texts.own}
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ name, estimate, written, most }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td className="figure">{written(estimate.mean)}</td>
                <td className="figure">
                  {between(estimate, written)}
                  <Interval of={estimate} most={most} label={between(estimate, written)} />
                </td>
                <td className="figure">
                  {estimate.next80 ? texts.between(written(estimate.next80[0]), written(estimate.next80[1])) : '–'}
                </td>
                <td className="figure">{percent(estimate.ownWeight)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="soft">{texts.numbersHow(of.matches)}</p>
    </div>
  )
}
