import { type ReactNode, useState } from 'react'
import { createPortal } from 'react-dom'
import { alliances } from '../../../../../src/model/scouting/types.ts'
import { Panel } from '../../../../shell/Panel.tsx'
import { words } from '../../../../words/catalogue.ts'
import { listed, plain, points } from '../../../../words/format.ts'
import type { EventPage } from '../../EventFrame.tsx'
import { matchName } from '../../names.ts'

type Category = 'autonomous' | 'goals' | 'finishes'

/** What a team brings by official totals: it opens to the totals that it took part in. */
export function SolvedMade(props: {
  page: EventPage
  team: string
  category: Category
  result: string
  children: ReactNode
}) {
  const [open, setOpen] = useState(false)
  const texts = words().explain
  return (
    <>
      <button type="button" className="opens" onClick={() => setOpen(true)} title={texts.opened}>
        {props.children}
        <span className="visually-hidden"> – {texts.openedShort}</span>
      </button>
      {open && createPortal(<Totals {...props} onClose={() => setOpen(false)} />, document.body)}
    </>
  )
}

interface Total {
  match: string
  name: string
  partners: string[]
  value: number
}

/** Official totals of a category: all alliances' mean, and those of the team. */
function totalsOf({ schedule, results }: EventPage, team: string, category: Category): { own: Total[]; mean: number } {
  const matches = new Map(schedule.matches.map(({ match }) => [match.id, match]))
  const gone = new Set([...matches.values()].flatMap(({ voids }) => voids ?? []))
  const entered = new Map(results.map(({ match, result }) => [match, result]))
  // In the order of the schedule.
  const all = [...matches].flatMap(([id, match]) => {
    const result = entered.get(id)
    if (!result || gone.has(id) || match.phase === 'practice') return []
    return alliances.flatMap((alliance) => {
      const value = result[alliance].points[category]
      const robots = match[alliance].filter(({ state }) => state !== 'absent').map((slot) => slot.team)
      return value === undefined ? [] : [{ match: id, name: matchName(match), robots, value }]
    })
  })
  return {
    mean: all.reduce((sum, { value }) => sum + value, 0) / Math.max(1, all.length),
    own: all.flatMap(({ robots, ...total }) =>
      robots.includes(team) ? [{ ...total, partners: robots.filter((other) => other !== team) }] : [],
    ),
  }
}

function Totals(props: { page: EventPage; team: string; category: Category; result: string; onClose(): void }) {
  const { page, team, category } = props
  const { made: texts, estimates } = words()
  const { own, mean } = totalsOf(page, team, category)
  return (
    <Panel title={words().explain.opened} open onClose={props.onClose} side>
      <h3>{texts.title(texts.solved.name(estimates.categories[category]), team)}</h3>
      <p>
        <strong>{props.result}</strong>
      </p>
      <p>{texts.solved.formula}</p>
      <table className="tide">
        <caption>{texts.solved.totals}</caption>
        <thead>
          <tr>
            <th scope="col">{texts.match}</th>
            <th scope="col">{texts.solved.partners}</th>
            <th scope="col" className="figure">
              {texts.solved.points}
            </th>
          </tr>
        </thead>
        <tbody>
          {own.map((each) => (
            <tr key={each.match}>
              <th scope="row">{each.name}</th>
              <td>{listed(each.partners)}</td>
              <td className="figure">{plain(each.value, 1)}</td>
            </tr>
          ))}
          <tr className="total">
            <th scope="row" colSpan={2}>
              {texts.solved.mean}
            </th>
            <td className="figure">{points(mean)}</td>
          </tr>
        </tbody>
      </table>
    </Panel>
  )
}
