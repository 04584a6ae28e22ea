import type { Game, Robot } from '../../../../src/model/documents/types.ts'
import type { AirPlan } from '../../../../src/model/timing/air/airPlan.ts'
import { AirCurves } from '../../../charts/timing/AirCurves.tsx'
import { CameAbout } from '../../../shell/CameAbout.tsx'
import { volume } from '../../../units/measures.ts'
import { words } from '../../../words/catalogue.ts'
import { plain, points, seconds } from '../../../words/format.ts'
import { said } from '../../timings/remarks.ts'
import { AirBudgetWords } from './AirBudgetWords.tsx'
import { airRemark, sayPressure } from './airProblems.ts'
import { cautiousWords, lostWords, moreWords, secondTankWords } from './airWords.ts'
import { explainAir } from './explainAir.ts'
import { legWords } from './legWords.ts'

type Possible = AirPlan & { possible: true }

const sayVolume = (value: number): string => said(value, volume)

/** What the plan makes of stored air: when it is lost, what that costs, and what a further tank is worth. */
export function AirAnswer(props: { game: Game; robot: Robot; answer: AirPlan; source: string }) {
  const { answer } = props
  return (
    <>
      {answer.possible ? (
        <Lasting {...props} answer={answer} />
      ) : (
        <p className="loss" role="alert">
          {airRemark(answer.why)}
        </p>
      )}
      {answer.warnings.map((warning) => (
        <p key={warning.code} className="loss">
          {airRemark(warning)}
        </p>
      ))}
    </>
  )
}

function Lasting(props: { game: Game; robot: Robot; answer: Possible; source: string }) {
  const { game, robot, answer } = props
  const { air } = robot
  const texts = words().air.answer
  const { teleop } = game.clock
  const { always, withThis, withOneTankMore } = answer.points
  const worth = [
    ['always', texts.always, always],
    ['withThis', texts.withThis, withThis],
    ['withMore', texts.withMore, withOneTankMore],
  ] as const
  return (
    <>
      <p className="air-lost" data-testid="air-lost">
        {lostWords(answer.lostAt, teleop)}
        <span className="soft">{cautiousWords(answer, teleop)}</span>
      </p>
      {air && <AirCurves {...answer.curves} working={air.working} lostAt={answer.lostAt} />}
      <p className="soft small">
        {texts.bound} {texts.flow}
      </p>
      <h3>{texts.points}</h3>
      <dl className="air-points">
        {worth.map(([id, name, value]) => (
          <div key={id}>
            <dt>{name}</dt>
            <dd className="numeral" data-testid={`air-${id}`}>
              {id === 'withThis' && air ? (
                <CameAbout explain={() => explainAir(answer, air, { teleop, source: props.source })}>
                  {points(value)}
                </CameAbout>
              ) : (
                points(value)
              )}
            </dd>
          </div>
        ))}
      </dl>
      <p data-testid="air-second">
        {secondTankWords(answer)} {moreWords(answer, teleop)}
      </p>
      <p className="soft small">{words().air.planDoesNotKnow}</p>
      <div className="soft small">
        {texts.notModelled}:
        <ul className="air-list">
          {texts.left.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      </div>
      {answer.lostAt !== null && <Slowed {...props} />}
      {answer.trips.length + answer.autonomous > 0 && (
        <>
          <h3>{texts.trips}</h3>
          <p className="soft small">{texts.free}</p>
          <ul className="air-list">
            {answer.autonomous > 0 && <li>{texts.autonomousRow(sayVolume(answer.autonomous))}</li>}
            {answer.trips.map(({ leg, expected, freeAir }) => (
              <li key={JSON.stringify(leg)}>
                {texts.tripRow({
                  leg: legWords(game, robot, leg),
                  count: plain(expected, 1),
                  each: sayVolume(freeAir),
                  all: sayVolume(expected * freeAir),
                })}
              </li>
            ))}
          </ul>
        </>
      )}
      {answer.budget && <AirBudgetWords game={game} robot={robot} budget={answer.budget} say={seconds} />}
    </>
  )
}

/** Where the loss is felt: the stages that take longer from then on. */
function Slowed(props: { game: Game; robot: Robot; answer: Possible }) {
  const { game, robot, answer } = props
  const texts = words().air.answer
  return (
    <>
      <h3>{texts.slowed}</h3>
      {answer.slowed.length === 0 ? (
        <p className="soft">{texts.noneSlowed}</p>
      ) : (
        <>
          <p className="soft small">{texts.slowedHelp(sayPressure(robot.air?.low ?? 0))}</p>
          <ul className="air-list">
            {answer.slowed.map((one) => (
              <li key={`${JSON.stringify(one.leg)}${one.stage}`}>
                {texts.slowedRow({
                  stage: one.name,
                  leg: legWords(game, robot, one.leg),
                  before: `${plain(one.seconds, 2)}\u00a0s`,
                  after: `${plain(one.slowed, 2)}\u00a0s`,
                  how: texts.by[one.by],
                })}
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  )
}
