import type { CoachCopy, PartnerCopy } from '../../../../src/model/briefing/index.ts'
import type { Game } from '../../../../src/model/documents/types.ts'
import type { EventPack } from '../../../data/eventPack.ts'
import { words } from '../../../words/catalogue.ts'
import { plain, points } from '../../../words/format.ts'
import { matchName } from '../matchNames.ts'
import { Lanes } from './Lanes.tsx'
import { callSaid, clock, goalsSaid, nameIn, sourcesSaid } from './said.ts'

type Job = CoachCopy['jobs'][number] | PartnerCopy['jobs'][number]

/** What one robot does, in large letters; what a partner must not read is not in its copy. */
function JobCard({ game, job, position, own }: { game: Game; job: Job; position: number; own: boolean }) {
  const texts = words().briefing
  const { call } = job
  return (
    <li className={own ? 'brief-job brief-ours' : 'brief-job'}>
      <h3>
        <span className="brief-position" aria-hidden="true">
          {position}
        </span>{' '}
        {job.team}
        {own ? ` · ${texts.us}` : ''}
      </h3>
      <p>{texts.start(nameIn(game, job.start))}</p>
      {job.goals.length === 0 ? (
        <p>{texts.noJob}</p>
      ) : (
        <p>
          {job.sources.length > 0 && `${sourcesSaid(game, job.sources)}. `}
          <strong>{texts.bring(goalsSaid(game, job.goals))}</strong>
        </p>
      )}
      <p className="brief-call">
        <strong>{callSaid(game, job)}</strong>
      </p>
      {call && 'early3' in call && call.at !== null && (
        <p className="brief-cost">{texts.late(points(call.early3), points(call.late3))}</p>
      )}
    </li>
  )
}

/** Jobs, lanes and the threat: what both copies that are read at arm's length have in common. */
export function JobSheet(props: { game: Game; copy: CoachCopy | PartnerCopy; own: readonly string[] }) {
  const { game, copy, own } = props
  const texts = words().briefing
  const { threat } = copy
  return (
    <>
      <ol className="brief-jobs">
        {copy.jobs
          .map((job, index) => ({ job, position: index + 1, ours: own.includes(job.team) }))
          // Ours is read first.
          .sort((a, b) => Number(b.ours) - Number(a.ours))
          .map(({ job, position, ours }) => (
            <JobCard key={job.team} game={game} job={job} position={position} own={ours} />
          ))}
      </ol>
      <section className="brief-threat">
        <h3>{texts.watch(threat.team)}</h3>
        <p>
          {threat.goal !== null && `${texts.watchGoal(nameIn(game, threat.goal))} `}
          {threat.marker === null ? texts.noMarker : texts.marker(threat.marker)}
        </p>
      </section>
      <Lanes game={game} jobs={copy.jobs} />
    </>
  )
}

/** The coach's copy: no probabilities, read at arm's length. */
export function CoachSheet(props: { pack: EventPack; copy: CoachCopy }) {
  const { pack, copy } = props
  return (
    <>
      <JobSheet game={pack.game} copy={copy} own={pack.own} />
      <LastCallSaid pack={pack} last={copy.last} />
    </>
  )
}

function LastCallSaid({ pack, last }: { pack: EventPack; last: CoachCopy['last'] }) {
  const texts = words().briefing
  if (last === null) return <p className="brief-last soft">{texts.lastNone}</p>
  const match = pack.matches.find(({ id }) => id === last.match)
  const score = last.score ? ` (${texts.lastScore(plain(last.score.ours, 1), plain(last.score.theirs, 1))})` : ''
  return (
    <section className="brief-last">
      <h3>
        {texts.last(match ? matchName(match) : last.match)}
        {score}
      </h3>
      <ul>
        {last.robots.map(({ team, called, left, finish }) => (
          <li key={team}>
            {texts.lastRobot(
              team,
              called === null ? texts.toTheEnd : clock(called),
              left === null ? texts.unseen : clock(left),
            )}
            {finish === undefined
              ? ''
              : `, ${finish === null ? texts.missed : texts.achieved(nameIn(pack.game, finish))}`}
          </li>
        ))}
      </ul>
    </section>
  )
}
