import type { Game, Option, Role } from '../../../../src/model/documents/types.ts'
import type { LineupRequest, LineupValue } from '../../../../src/model/match/lineup/types.ts'
import { placeName } from '../../../words/actions.ts'
import { words } from '../../../words/catalogue.ts'
import { listed, percent, plain } from '../../../words/format.ts'
import { differenceSaid, isSettled, valueSaid } from '../../tradeoffs/objective/standing.ts'
import { SideBySide } from '../../tradeoffs/SideBySide.tsx'
import { positionName, signOf } from '../names.ts'
import type { Found } from './useLineup.ts'

/** The best line-up and the runner-up, robot by robot, what the runner-up loses, and where the best does worst. */
export function FoundLineup(props: { found: Found }) {
  const { request, report, left } = props.found
  const { game, ours } = request
  const text = words().lineup
  const { best, runnerUp, loses, worst } = report
  const measure = request.objective
  const columns = [
    { head: text.best, value: best },
    ...(runnerUp ? [{ head: left > 2 ? text.nextYet : text.runnerUp, value: runnerUp }] : []),
  ]
  return (
    <>
      <p className="answer">{text.found(text.objectives[measure], valueSaid(measure, best.value))}</p>
      <SideBySide
        caption={text.table}
        first={text.robot}
        least={150}
        columns={columns.map(({ head }) => head)}
        rows={[
          ...ours.map((option, position) => ({
            id: String(position),
            name: `${signOf(position)} ${option.robot.name}`,
            cells: columns.map(({ value }) => roleWords(game, option, value.roles[position]!)),
          })),
          {
            id: 'value',
            name: text.objectives[measure],
            cells: columns.map(({ value }) => valueCell(measure, value)),
          },
        ]}
      />
      {loses && runnerUp && (
        <p>
          {isSettled(loses)
            ? text.loses(differenceSaid(measure, { ...loses, mean: -loses.mean }))
            : text.even(differenceSaid(measure, { ...loses, mean: -loses.mean }))}
        </p>
      )}
      {!runnerUp && <p>{text.onlyOne}</p>}
      {request.theirs.length > 1 && (
        <p>
          {text.worst(
            worst.rival + 1,
            measure === 'win' ? percent(worst.value) : plain(worst.value),
            listed(request.theirs[worst.rival]!.map(({ name }) => name)),
          )}
        </p>
      )}
      <p className="soft small">
        {text.counted(plain(report.candidates), plain(report.simulated), plain(report.replicates), plain(report.seed))}{' '}
        {text.errors}
      </p>
    </>
  )
}

const valueCell = (measure: LineupRequest['objective'], { value }: LineupValue) => ({
  shown: valueSaid(measure, value),
  value: measure === 'win' ? 100 * value.mean : value.mean,
  ...(measure === 'win' ? { unit: '%' } : {}),
})

/** 'Piers and Gantry; Davit': its goals, then its finish. */
export function roleWords(game: Game, { finish }: Pick<Option, 'finish'>, { goals, finishes, defend }: Role): string {
  const text = words().lineup
  const names = (ids: readonly string[]) => ids.map((id) => placeName(game, id))
  return [
    goals.length > 0 ? listed(names(goals)) : text.noGoal,
    finish.mode === 'skip' || finishes.length === 0 ? text.noFinish : text.either(names(finishes)),
    ...(defend
      ? [text.defends(positionName('theirs', defend.mark), plain(defend.from, 1), plain(defend.until, 1))]
      : []),
  ].join('; ')
}
