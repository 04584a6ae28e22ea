import { words } from '../../../words/catalogue.ts'
import { costWords } from './airWords.ts'
import type { AirAsked } from './useAirPlan.ts'

/** Beside points that take it that air always lasts: what it costs, where it costs anything. */
export function AirNote(props: { asked: AirAsked }) {
  const { answer } = props.asked
  const said = answer && costWords(answer)
  if (!said) return null
  return (
    <div data-testid="air-note">
      <span className="loss">{said}</span> <a href="#air-title">{words().air.note.see}</a>
    </div>
  )
}
