import type { Briefing } from '../../../../src/model/briefing/index.ts'
import type { Game } from '../../../../src/model/documents/types.ts'
import { DifferenceDots, dotsBehind } from '../../../charts/DifferenceDots.tsx'
import { Measured } from '../../../charts/Measured.tsx'
import { quantileDots } from '../../../charts/quantileDots.ts'
import type { EventPack } from '../../../data/eventPack.ts'
import { words } from '../../../words/catalogue.ts'
import { percent, plain, seconds, signedPoints } from '../../../words/format.ts'
import { chanceSaid, pointsSaid } from '../../match/said.ts'
import { SideBySide } from '../../tradeoffs/SideBySide.tsx'
import { trustOf } from '../forecasts/said.ts'
import { callSaid, clock, costSaid, doesSaid, factsSaid, gainsSaid, losesOf, nameIn } from './said.ts'

/** Where a distribution has so much below it. */
function quantile(distribution: readonly (readonly [number, number])[], share: number): number {
  const all = distribution.reduce((sum, [, probability]) => sum + probability, 0)
  let below = 0
  for (const [value, probability] of distribution) {
    below += probability
    if (below >= share * all) return value
  }
  return distribution.at(-1)?.[0] ?? 0
}

/** Everything: for whoever decides about the plan. */
export function StrategistSheet(props: { pack: EventPack; briefing: Briefing; byHand: boolean }) {
  const { briefing, pack, byHand } = props
  const { game } = pack
  const texts = words().briefing
  const { report } = briefing
  const win = report.win.probability + report.tie.probability / 2
  // Of a line-up that is surely worse anyway nothing has to come for that.
  const computed = byHand ? briefing.lineUps[1]?.loses?.win : undefined
  const worse = computed !== undefined && computed.mean < -2 * computed.standardError
  return (
    <div className="brief-all">
      <p className="brief-chance">
        <strong>{texts.win(percent(win))}</strong>
        {byHand && ` ${texts.byHand}`}
      </p>
      <div className="brief-columns">
        <Scores briefing={briefing} />
        <Bonuses game={game} briefing={briefing} />
      </div>
      <div className="brief-lead-calls">
        <Lead briefing={briefing} />
        <Calls game={game} briefing={briefing} />
      </div>
      <LineUps game={game} briefing={briefing} byHand={byHand} />
      <Slowing briefing={briefing} />
      <section>
        <h3>{texts.facts}</h3>
        <ul>
          {(worse ? [texts.worseAnyway] : factsSaid(briefing.facts)).map((fact) => (
            <li key={fact}>{fact}</li>
          ))}
        </ul>
      </section>
      <section>
        <h3>{texts.contention}</h3>
        <p>
          {briefing.contention.length === 0
            ? texts.noWaiting
            : `${briefing.contention.map(({ team, place, seconds: { mean } }) => texts.waits(team, seconds(mean), nameIn(game, place))).join('; ')}.`}
        </p>
      </section>
      <Trust pack={pack} />
      <p className="soft">{texts.errors(briefing.replicates)}</p>
    </div>
  )
}

function Scores({ briefing: { report } }: { briefing: Briefing }) {
  const texts = words().briefing
  const interval = (side: 'ours' | 'theirs') =>
    texts.between(
      plain(quantile(report.distributions[side], 0.1), 0),
      plain(quantile(report.distributions[side], 0.9), 0),
    )
  return (
    <section>
      <h3>{texts.scores}</h3>
      <SideBySide
        least={70}
        caption={texts.scores}
        first={texts.perMatch}
        columns={[texts.oursColumn, texts.theirs]}
        rows={[
          { id: 'mean', name: texts.score, cells: [pointsSaid(report.score.ours), pointsSaid(report.score.theirs)] },
          { id: 'interval', name: texts.interval, cells: [interval('ours'), interval('theirs')] },
        ]}
      />
    </section>
  )
}

function Bonuses({ game, briefing: { report } }: { game: Game; briefing: Briefing }) {
  const texts = words().briefing
  const { ours, theirs } = report.rankingPoints
  return (
    <section>
      <h3>{texts.bonuses}</h3>
      <SideBySide
        least={70}
        caption={texts.bonuses}
        first={texts.perMatch}
        columns={[texts.oursColumn, texts.theirs]}
        rows={[
          { id: 'points', name: texts.rankingPoints, cells: [pointsSaid(ours), pointsSaid(theirs)] },
          ...game.bonuses.map(({ id, name }) => ({
            id,
            name,
            cells: [chanceSaid(report.bonuses[id]!.ours), chanceSaid(report.bonuses[id]!.theirs)],
          })),
        ]}
      />
    </section>
  )
}

function Lead({ briefing: { report } }: { briefing: Briefing }) {
  const texts = words().briefing
  const dots = quantileDots(report.distributions.margin)
  return (
    <section>
      <h3>{texts.lead}</h3>
      <Measured drawn="lead" data={report} most={420}>
        {(width) => (
          <DifferenceDots
            distribution={report.distributions.margin}
            mean={report.margin.mean}
            width={width}
            index={0}
            axis={texts.axis}
            told={texts.leadTold(dotsBehind(dots), signedPoints(report.margin.mean))}
          />
        )}
      </Measured>
    </section>
  )
}

function Calls({ game, briefing }: { game: Game; briefing: Briefing }) {
  const texts = words().briefing
  return (
    <section>
      <h3>{texts.calls}</h3>
      <SideBySide
        least={84}
        caption={texts.calls}
        first={texts.robot}
        columns={[texts.call, texts.early, texts.lateCosts]}
        rows={briefing.jobs.map((job) => ({
          id: job.team,
          name: job.team,
          cells: [
            job.call?.at == null ? callSaid(game, job) : clock(job.call.at),
            job.call ? costSaid(job.call.early3) : '',
            job.call ? costSaid(job.call.late3) : '',
          ],
        }))}
      />
    </section>
  )
}

function LineUps({ game, briefing, byHand }: { game: Game; briefing: Briefing; byHand: boolean }) {
  const texts = words().briefing
  const { lineUps, considered, jobs } = briefing
  return (
    <section className="brief-lineups">
      <h3>{texts.lineUps}</h3>
      <SideBySide
        least={84}
        caption={texts.lineUps}
        first={texts.lineUp}
        columns={[...jobs.map(({ team }) => team), texts.chance, texts.loses]}
        rows={lineUps.map(({ goals, loses, win }, index) => ({
          id: String(index),
          name: index === 0 ? texts.best : byHand ? texts.computedRow : texts.runnerUp,
          cells: [
            ...goals.map((own) => doesSaid(game, own, briefing.threat.team)),
            percent(win.mean),
            loses ? losesOf(loses) : '',
          ],
        }))}
      />
      {lineUps.length < 2 && <p>{texts.alone}</p>}
      {!byHand && <p className="soft">{texts.considered(considered.played, considered.candidates)}</p>}
    </section>
  )
}

function Slowing({ briefing }: { briefing: Briefing }) {
  const texts = words().briefing
  const { slowings, threat, slowing } = briefing
  return (
    <section>
      <h3>{texts.slowing}</h3>
      <p>{slowings.map(({ team, gains }) => texts.markingSaid(team, gainsSaid(gains))).join('; ')}.</p>
      <p>
        {texts.marking} ({threat.team}):{' '}
        {threat.markers.map(({ team, gains }) => texts.markingSaid(team, gainsSaid(gains))).join('; ')}.
      </p>
      <p className="soft">{texts.slowingHow(percent(slowing))}</p>
    </section>
  )
}

function Trust({ pack }: { pack: EventPack }) {
  const texts = words().briefing
  const [first] = trustOf(pack.calls)
  return (
    <section>
      <h3>{texts.trust}</h3>
      <p>{first ? `${first.count} ${first.verdict}` : texts.noTrust}</p>
    </section>
  )
}
