import type { Game } from '../../../src/model/documents/types.ts'
import type { MatchReport, Measured, RobotReport } from '../../../src/model/match/types.ts'
import type { ValueCell } from '../../charts/cell.ts'
import { RobotSign, sideOf } from '../../charts/RobotSign.tsx'
import { placeName } from '../../words/actions.ts'
import { words } from '../../words/catalogue.ts'
import { seconds } from '../../words/format.ts'
import type { Lineup } from '../../worker/protocol.ts'
import { SideBySide } from '../tradeoffs/SideBySide.tsx'
import { optionsOf, signOf } from './names.ts'
import { chanceValue, pointsValue, secondsSaid, secondsValue } from './said.ts'

const seldom = 0.0005
const some = (values: readonly (Measured | undefined)[]) => values.some((value) => (value?.mean ?? 0) >= seldom)

/** What each robot brings: points, pieces by goal, finishes, and the time it loses. */
export function Robots(props: { game: Game; lineup: Lineup; report: MatchReport }) {
  const { game, lineup, report } = props
  const text = words().match.robots
  // A column where nobody has anything would only take the room of the others.
  const goals = game.goals.filter(({ id }) => some(report.robots.map(({ pieces }) => pieces[id])))
  const finishes = game.finishes.filter(({ id }) => some(report.robots.map((robot) => robot.finishes[id])))
  const marks = some(report.robots.map(({ defending }) => defending))
  return (
    <section className="sheet stack" aria-labelledby="match-robots">
      <h2 id="match-robots">{text.title}</h2>
      <SideBySide
        caption={text.table}
        first={text.robot}
        least={104}
        columns={[
          text.points,
          ...goals.map(({ name }) => text.pieces(name)),
          ...finishes.map(({ name }) => text.finish(name)),
          text.waiting,
          ...(marks ? [text.defending] : []),
        ]}
        rows={report.robots.map((robot, index) => ({
          id: signOf(index),
          name: (
            <span className="robot-name">
              <RobotSign side={sideOf(index)} sign={signOf(index)} />
              <span>
                <span className="visually-hidden">{signOf(index)} </span>
                {optionsOf(lineup)[index]!.name}
              </span>
            </span>
          ),
          cells: [
            pointsValue(robot.points),
            ...goals.map(({ id }) => pointsValue(robot.pieces[id]!)),
            ...finishes.map(({ id }) => {
              const { mean, standardError } = robot.finishes[id]!
              return chanceValue({ probability: mean, standardError })
            }),
            waitingValue(game, robot),
            ...(marks ? [secondsValue(robot.defending)] : []),
          ],
        }))}
      />
      <p className="soft small">{text.help}</p>
    </section>
  )
}

/** Shorter waits at a place are left out of the list (s). */
const worthNaming = 0.05

/** Seconds of waiting in all, and below them the places where it waits, the longest first. */
function waitingValue(game: Game, { waited, waiting }: RobotReport): ValueCell {
  const places = Object.entries(waiting)
    .filter(([, { mean }]) => mean >= worthNaming)
    .sort(([, a], [, b]) => b.mean - a.mean)
  const shown = (
    <>
      {secondsSaid(waited)}
      {places.map(([id, { mean }]) => (
        <span key={id} className="waits-at">
          {placeName(game, id)} <span className="numeral">{seconds(mean)}</span>
        </span>
      ))}
    </>
  )
  return { shown, value: waited.mean, unit: 's' }
}
