import type { Game, Robot } from '../../../../src/model/documents/types.ts'
import type { AirBudget } from '../../../../src/model/timing/air/airPlan.ts'
import { words } from '../../../words/catalogue.ts'
import { legWords } from './legWords.ts'

/** The plain budget of equal cycles in sentences. */
export function AirBudgetWords(props: { game: Game; robot: Robot; budget: AirBudget; say(seconds: number): string }) {
  const { game, robot, budget, say } = props
  const texts = words().air.answer
  const { collect, score, cycleSeconds, answer } = budget
  const named = (leg: typeof score) => legWords(game, robot, leg)
  return (
    <>
      <h3>{texts.budget}</h3>
      <p data-testid="air-budget">
        {texts.cycle(collect && named(collect), named(score), say(cycleSeconds))} {lasting(answer)}
      </p>
    </>
  )

  function lasting(told: AirBudget['answer']): string {
    if (!told.possible) return texts.notOne
    const { cycles, cyclesInMatch, lostAt, sustainedSeconds, compressorDuty } = told.quantities
    const lasts = lostAt === null ? texts.cyclesAll(cyclesInMatch) : texts.cycles(cycles, cyclesInMatch)
    if (sustainedSeconds !== null) return `${lasts} ${texts.sustained(say(sustainedSeconds))}`
    if (compressorDuty !== null) return `${lasts} ${texts.tooWeak}`
    return lostAt === null ? lasts : `${lasts} ${texts.notSustained}`
  }
}
