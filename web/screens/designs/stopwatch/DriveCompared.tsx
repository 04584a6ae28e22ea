import { useMemo } from 'react'
import { Link } from 'wouter'
import type { TimedTrial } from '../../../../src/model/documents/timing.ts'
import type { Game, Robot } from '../../../../src/model/documents/types.ts'
import { measured } from '../../../../src/model/samples/index.ts'
import { sayDistance } from '../../../units/write.ts'
import { words } from '../../../words/catalogue.ts'
import { plain, seconds } from '../../../words/format.ts'
import { useModel } from '../../../worker/useModel.ts'
import { comparedDrive, type Ends } from './drives.ts'

/** The drives timed beside the computed one. Which of pace and own time it shows is a person's judgement, so nothing is taken over. */
export function DriveCompared(props: {
  design: string
  game: Game
  robot: Robot
  ends: Ends
  trials: readonly TimedTrial[]
}) {
  const { game, robot, ends, trials } = props
  const texts = words().stopwatch.drive
  const { from, to } = ends
  const route = useModel(
    'travel',
    useMemo(
      () => ({ game, robot: { footprint: robot.footprint, drive: robot.drive }, from, to }),
      [game, robot.footprint, robot.drive, from, to],
    ),
  )
  const counting = trials.filter(({ struck }) => struck === null).length
  const times = measured(trials)?.seconds ?? null
  const found = route.isPlaceholderData ? undefined : route.data
  const compared = found && found.seconds > 0 && times ? comparedDrive(times, found.seconds, robot.drive.pace) : null
  const ideal = found && comparedDrive([found.seconds], found.seconds, robot.drive.pace)
  return (
    <section className="stack" aria-label={texts.title} data-testid="drive">
      <h2>{texts.title}</h2>
      {route.error ? (
        <p role="alert">{route.error.message}</p>
      ) : found && ideal ? (
        <p>
          {texts.computed({
            length: sayDistance(found.length),
            ideal: seconds(found.seconds),
            expected: seconds(ideal.expected),
          })}
        </p>
      ) : (
        <p className="soft">…</p>
      )}
      <p role="status">
        {compared && times
          ? texts.measured({
              count: times.length,
              mean: seconds(compared.measured),
              low: seconds(Math.min(...times)),
              high: seconds(Math.max(...times)),
              difference: seconds(Math.abs(compared.difference)),
              longer: compared.difference >= 0,
              factor: plain(compared.factor, 2),
            })
          : words().stopwatch.sum.few(counting)}
      </p>
      <p className="soft small">
        {texts.onePace} <Link href={`/designs/${props.design}`}>{words().stopwatch.back}</Link>
      </p>
    </section>
  )
}
