import type { CoachCopy, PartnerCopy } from '../../../../src/model/briefing/index.ts'
import type { Game } from '../../../../src/model/documents/types.ts'
import type { EventPack } from '../../../data/eventPack.ts'
import { words } from '../../../words/catalogue.ts'
import { plain, points } from '../../../words/format.ts'
import { matchName } from '../matchNames.ts'
import { Lanes } from './Lanes.tsx'
import { callSaid, clock, mainGoal, nameIn, sourcesSaid } from './said.ts'

type Job = CoachCopy['jobs'][number] | PartnerCopy['jobs'][number]

/** What one robot does, in large letters; what a partner must not read is not in its copy. */
function JobCard(props: {
  game: Game
  job: Job
  position: number
  own: boolean
  sources: boolean
  stands: boolean
  threat: string
}) {
  const { game, job, position, own, threat } = props
  const texts = words().briefing
  const { call } = job
  const [goal, others] = mainGoal(game, job.goals)
  return (
    <li className={own ? 'brief-job brief-ours' : 'brief-job'}>
      <h3>
        <span className="brief-position" aria-hidden="true">
          {position}
        </span>{' '}
        {job.team}
        {own ? ` · ${texts.us}` : ''}
      </h3>
      {props.stands ? (
        <p className="brief-do">
          <strong>{texts.stand(threat)}</strong>. {texts.standHow}
        </p>
      ) : job.goals.length === 0 ? (
        <p>{texts.noJob}</p>
      ) : (
        <p className="brief-do">
          <strong>{texts.bring(goal)}</strong>
          {others !== '' && texts.orElse(others)}
        </p>
      )}
      <p className="brief-call">
        <strong>{callSaid(game, job)}</strong>
      </p>
      <p>
        {texts.start(nameIn(game, job.start))}
        {props.sources && job.sources.length > 0 && `. ${sourcesSaid(game, job.sources)}`}
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
  // What is the same for all is said once.
  const collecting = copy.jobs.filter(({ sources }) => sources.length > 0)
  const [first] = collecting
  const alike = collecting.length > 1 && collecting.every(({ sources }) => sources.join() === first!.sources.join())
  return (
    <div className="brief-sheet">
      <ol className="brief-jobs">
        {copy.jobs
          .map((job, index) => ({ job, position: index + 1, ours: own.includes(job.team) }))
          // Ours is read first.
          .sort((a, b) => Number(b.ours) - Number(a.ours))
          .map(({ job, position, ours }) => (
            <JobCard
              key={job.team}
              game={game}
              job={job}
              position={position}
              own={ours}
              sources={!alike}
              stands={threat.marker === job.team}
              threat={threat.team}
            />
          ))}
      </ol>
      {alike && <p className="brief-shared">{sourcesSaid(game, first!.sources)}.</p>}
      <section className="brief-threat">
        <h3>
          {threat.goal === null ? texts.watch(threat.team) : texts.watchAt(threat.team, nameIn(game, threat.goal))}
        </h3>
        <p>{threat.marker === null ? texts.noMarker : texts.marker(threat.marker)}</p>
      </section>
      <Lanes game={game} jobs={copy.jobs} />
    </div>
  )
}

/** As much of a note as a page has room for. */
const shortened = (note: string, most = 160) => (note.length <= most ? note : `${note.slice(0, most - 1).trimEnd()}…`)

/** The coach's copy: no probabilities, read at arm's length. */
export function CoachSheet(props: { pack: EventPack; copy: CoachCopy; note: string }) {
  const { pack, copy, note } = props
  return (
    <>
      <JobSheet game={pack.game} copy={copy} own={pack.own} />
      {note !== '' && <p className="brief-note">{words().briefing.keptNote(shortened(note))}</p>}
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
