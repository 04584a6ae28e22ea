import { useMemo } from 'react'
import { CameAbout } from '../../../shell/CameAbout.tsx'
import { placeName } from '../../../words/actions.ts'
import { words } from '../../../words/catalogue.ts'
import { decimal } from '../../../words/decimal.ts'
import type { Explanation } from '../../../words/explain.ts'
import { percent, points, seconds } from '../../../words/format.ts'
import { type RoutinePoints, routinePoints } from './expected.ts'
import type { RoutineProps } from './RoutineFields.tsx'

/** What the routine is expected to bring; it opens to its steps. */
export function RoutineExpected(props: RoutineProps) {
  const { game, option, auto } = props
  const texts = words().routines.points
  const found = useMemo(() => routinePoints(game, option, auto), [game, option, auto])
  return (
    <div>
      <CameAbout explain={() => explainRoutine(props, found)}>
        <strong>{texts.expected(points(found.total))}</strong>
      </CameAbout>
      {auto.steps.length > 0 && <>. {texts.spread(percent(found.none), percent(found.all))}</>}
    </div>
  )
}

export function explainRoutine(of: RoutineProps, found: RoutinePoints): Explanation {
  const { game, option, auto, source } = of
  const texts = words().routines.points
  const holds = [...new Set(auto.steps.map(({ goal }) => goal))].filter(
    (id) => game.goals.find((goal) => goal.id === id)?.award.kind === 'hold',
  )
  return {
    title: texts.title(auto.name),
    result: texts.result(points(found.total)),
    formula: texts.formula,
    otherwise: words().explainDesigns.otherwise.routine,
    links: [['/trade-offs', words().explainDesigns.toTradeOffs]],
    parts: [
      ...auto.steps.map((step, index) => {
        const part = found.steps[index]!
        const note = texts.note({
          pieces: decimal(part.pieces, 2),
          tried: percent(part.tried),
          success: percent(step.success),
          worth: points(part.worth),
        })
        return {
          label: texts.step(index + 1, placeName(game, step.goal)),
          value: points(part.points),
          note: part.limited ? texts.room(note) : note,
        }
      }),
      ...(game.leave
        ? [
            {
              label: texts.leaves,
              value: points(found.leaves),
              note: texts.leavesNote(percent(auto.leaves), points(game.leave.points)),
            },
          ]
        : []),
    ],
    total: { label: texts.total, value: points(found.total) },
    inputs: [
      { label: texts.length, value: seconds(game.clock.auto) },
      ...holds.map((id) => ({
        label: texts.hold(placeName(game, id)),
        value: seconds(option.holdSeconds[id] ?? 0),
      })),
    ],
    source,
  }
}
