import { memo, useMemo } from 'react'
import type { Game } from '../../../src/model/documents/types.ts'
import type { QuickPlan } from '../../../src/model/plan/types.ts'
import { Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { type PolicyRow, PolicyStrip } from '../../charts/PolicyStrip.tsx'
import { actionWords, nodeWords } from '../../words/actions.ts'
import { words } from '../../words/catalogue.ts'
import { seconds } from '../../words/format.ts'
import { reachable, type teleopStart } from './cycle.ts'

function Policy(props: { game: Game; start: string; plan: QuickPlan | null; stale: boolean }) {
  const { game, start, plan } = props
  const texts = words().designs.policy
  const rows = useMemo(() => (plan ? policyRows(game, plan, JSON.parse(start)) : []), [game, plan, start])
  if (!plan) return null
  return (
    <section className="sheet stack" aria-labelledby="policy-title" style={props.stale ? { opacity: 0.55 } : undefined}>
      <h2 id="policy-title">{texts.title}</h2>
      <p>{texts.help}</p>
      <Figure
        title={texts.figure}
        hideTitle
        table={{
          head: texts.head,
          rows: rows.flatMap((row) =>
            row.bands.map((band) => [row.name, texts.span(seconds(band.from), seconds(band.to)), band.text]),
          ),
        }}
      >
        <Measured drawn="policy" data={rows}>
          {(width) => <PolicyStrip rows={rows} teleop={game.clock.teleop} endgame={game.clock.endgame} width={width} />}
        </Measured>
      </Figure>
    </section>
  )
}

/**
 * What is best next from each place that the plan comes to, over time left.
 * `start`: where teleop begins, as JSON, so that an edit that leaves the plan as it is draws nothing anew.
 */
export const PolicyPanel = memo(Policy)

export function policyRows(
  game: Game,
  plan: Pick<QuickPlan, 'policy'>,
  start: ReturnType<typeof teleopStart>,
): PolicyRow[] {
  return reachable(game, plan.policy, start).flatMap((node) => {
    const entry = plan.policy.find(
      (candidate) => candidate.node.at === node.at && JSON.stringify(candidate.node.load) === JSON.stringify(node.load),
    )
    if (!entry || entry.bands.length === 0) return []
    const name = nodeWords(game, node)
    return [
      {
        id: `${node.at}/${node.load?.piece ?? ''}/${node.load?.count ?? 0}`,
        name,
        bands: entry.bands.map(({ from, to, action }) => ({
          from,
          to,
          kind: action.kind,
          text: actionWords(game, action),
        })),
      },
    ]
  })
}
