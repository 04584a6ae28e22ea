import type { Game } from '../../../src/model/documents/types.ts'
import type { MatchReport } from '../../../src/model/match/types.ts'
import { Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { sideOf } from '../../charts/RobotSign.tsx'
import { WaitingBars } from '../../charts/WaitingBars.tsx'
import { placeName } from '../../words/actions.ts'
import { words } from '../../words/catalogue.ts'
import type { Lineup } from '../../worker/protocol.ts'
import { robotName, signOf } from './names.ts'
import { secondsValue } from './said.ts'

/** Shorter waits are no queue that anybody would see (s). */
const worthShowing = 0.05

/** Where robots queue, and who. */
export function Waiting(props: { game: Game; lineup: Lineup; report: MatchReport }) {
  const { game, lineup, report } = props
  const text = words().match.waiting
  const ids = [...game.sources, ...game.goals].map(({ id }) => id)
  const places = ids
    .map((id) => ({
      id,
      name: placeName(game, id),
      robots: report.robots.map(({ waiting }, robot) => ({
        sign: signOf(robot),
        side: sideOf(robot),
        seconds: waiting[id]?.mean ?? 0,
        error: waiting[id]?.standardError ?? 0,
      })),
    }))
    .filter(({ robots }) => robots.some(({ seconds }) => seconds >= worthShowing))
  return (
    <section className="sheet stack" aria-labelledby="match-waiting">
      <h2 id="match-waiting">{text.title}</h2>
      {places.length === 0 ? (
        <p>{text.none}</p>
      ) : (
        <>
          <Figure
            title={text.figure}
            hideTitle
            table={{
              head: [text.place, ...report.robots.map((_, robot) => robotName(lineup, robot))],
              rows: places.map(({ id, name }) => [
                name,
                ...report.robots.map(({ waiting }) => secondsValue(waiting[id]!)),
              ]),
            }}
          >
            <Measured drawn="waiting" data={places} most={760}>
              {(width) => <WaitingBars places={places} width={width} />}
            </Measured>
          </Figure>
          <p className="soft small">{text.help}</p>
        </>
      )}
    </section>
  )
}
