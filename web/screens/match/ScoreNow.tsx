import type { Game } from '../../../src/model/documents/types.ts'
import type { Both } from '../../../src/model/match/types.ts'
import { RobotSign, sideOf } from '../../charts/RobotSign.tsx'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'
import type { Lineup } from '../../worker/protocol.ts'
import { doingWords } from './happened.ts'
import { optionsOf, sideName, signOf } from './names.ts'
import type { Moment } from './replay.ts'

/** Points and pieces of both alliances by now; at the end the final points. */
export function ScoreNow(props: { game: Game; moment: Moment; final: Both<number> | null }) {
  const { game, moment, final } = props
  const text = words().match.replay
  return (
    <>
      <table className="tide">
        <caption>{text.score}</caption>
        <thead>
          <tr>
            <th scope="col">{text.scoreSide}</th>
            <th scope="col" className="figure">
              {final ? text.final : text.soFar}
            </th>
            {game.goals.map(({ id, name }) => (
              <th key={id} scope="col" className="figure">
                {text.pieces(name)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {(['ours', 'theirs'] as const).map((side) => (
            <tr key={side}>
              <th scope="row">{sideName(side)}</th>
              <td className="figure">
                <strong>{plain((final ?? moment.points)[side], 1)}</strong>
              </td>
              {game.goals.map(({ id }) => (
                <td key={id} className="figure">
                  {moment.pieces[side][id]}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="soft small">{text.soFarHelp}</p>
    </>
  )
}

/** What each robot is at. */
export function RobotsNow(props: { game: Game; lineup: Lineup; moment: Moment }) {
  const { game, lineup, moment } = props
  const text = words().match.replay
  return (
    <table className="tide now">
      <caption>{text.now}</caption>
      <thead>
        <tr>
          <th scope="col">{words().match.robots.robot}</th>
          <th scope="col">{text.does}</th>
          <th scope="col" className="figure">
            {text.holds}
          </th>
        </tr>
      </thead>
      <tbody>
        {moment.robots.map(({ doing, place, load }, robot) => (
          <tr key={signOf(robot)}>
            <th scope="row">
              <span className="robot-name">
                <RobotSign side={sideOf(robot)} sign={signOf(robot)} />
                <span>
                  <span className="visually-hidden">{signOf(robot)} </span>
                  {optionsOf(lineup)[robot]!.robot.name}
                </span>
              </span>
            </th>
            <td>{doingWords(game, doing, place)}</td>
            <td className="figure">{load}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
