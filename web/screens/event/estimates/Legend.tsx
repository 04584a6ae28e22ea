import type { Game } from '../../../../src/model/documents/types.ts'
import { words } from '../../../words/catalogue.ts'
import { GoalMark } from './TimelineStrip.tsx'

/** What the marks of timeline strips mean. */
export function Legend({ game }: { game: Game }) {
  const texts = words().estimates
  return (
    <ul className="strip-legend">
      {game.goals.map(({ id, name }, index) => (
        <li key={id}>
          <svg viewBox="0 0 12 12" aria-hidden="true">
            <GoalMark index={index} x={6} y={6} hit />
          </svg>
          {name}
        </li>
      ))}
      <li>
        <svg viewBox="0 0 12 12" aria-hidden="true">
          <GoalMark index={0} x={6} y={6} hit={false} />
        </svg>
        {texts.emptyIsMiss}
      </li>
      <li>{texts.ticks}</li>
    </ul>
  )
}
