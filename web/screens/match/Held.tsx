import type { Game } from '../../../src/model/documents/types.ts'
import type { MatchReport } from '../../../src/model/match/types.ts'
import { words } from '../../words/catalogue.ts'
import { SideBySide } from '../tradeoffs/SideBySide.tsx'
import type { Ways } from './MatchDesk.tsx'
import { sideName } from './names.ts'
import { secondsValue } from './said.ts'
import type { Slots } from './setup.ts'
import { TakeOver } from './TakeOver.tsx'

/** What a piece on a goal that pays by the second really buys, and how to plan with that. */
export function Held(props: { game: Game; report: MatchReport; ways: Ways; ours: Slots }) {
  const { game, report, ways, ours } = props
  const text = words().match.held
  const goals = game.goals.filter(({ award }) => award.kind === 'hold')
  if (goals.length === 0) return null
  return (
    <>
      {goals.map((goal, index) => {
        const seconds = report.heldSeconds[goal.id]!
        const perPiece = report.heldSecondsPerPiece[goal.id]!
        // In the order of their positions, each once.
        const scorers = [...new Set(ours)]
          .flatMap((own) => ways.find(({ id }) => id === own) ?? [])
          .filter(({ body }) => body.option.role.goals.includes(goal.id))
        const id = index === 0 ? 'match-held' : `match-held-${goal.id}`
        return (
          <section key={goal.id} className="sheet stack" aria-labelledby={id}>
            <h2 id={id}>{text.title(goal.name)}</h2>
            <p className="soft small">{text.help}</p>
            <SideBySide
              caption={text.table(goal.name)}
              first={text.side}
              columns={[text.seconds, text.average, text.marginal]}
              rows={(['ours', 'theirs'] as const).map((side) => ({
                id: side,
                name: sideName(side),
                cells: [
                  secondsValue(seconds[side]),
                  ...(['average', 'marginal'] as const).map((kind) => {
                    const { value, standardError } = perPiece[side][kind]
                    return secondsValue({ mean: value, standardError })
                  }),
                ],
              }))}
            />
            {scorers.length === 0 ? (
              <p className="soft small">{text.none}</p>
            ) : (
              <TakeOver goal={goal} perPiece={perPiece.ours} ways={scorers} />
            )}
          </section>
        )
      })}
    </>
  )
}
