import { air } from './air/air.ts'
import { answer } from './answer/answer.ts'
import type { AirAnswer, Answers } from './answers.ts'
import { cylinder } from './cylinder/cylinder.ts'
import { drive } from './drive/drive.ts'
import type { AirInput, CalculatorName, Inputs } from './inputs.ts'
import { pivot } from './pivot/pivot.ts'
import { rollers } from './rollers/rollers.ts'
import { shot } from './shot/shot.ts'
import { wheel } from './wheel/wheel.ts'

/** Without a compressor that is strong enough there is no time to tell, only what happens to the pressure. */
function answerAir(input: AirInput): AirAnswer {
  const told = answer(air, input)
  if (!told.possible || told.quantities.sustainedSeconds !== null) return told
  return { ...told, seconds: null, duration: null, belief: null, spread: null, sensitivity: [] }
}

const calculators: { readonly [Name in CalculatorName]: (input: Inputs[Name]) => Answers[Name] } = {
  drive: (input) => answer(drive, input),
  rollers: (input) => answer(rollers, input),
  pivot: (input) => answer(pivot, input),
  wheel: (input) => answer(wheel, input),
  shot: (input) => answer(shot, input),
  cylinder: (input) => answer(cylinder, input),
  air: answerAir,
}

/**
 * The time of a mechanism from its hardware, with its spread, its sensitivities, what an engineer checks, and curves to draw; or
 * why it can not do it. SI units, pressures absolute.
 *
 * @throws ModelError 'overBudget' where a motion can not be followed in a reasonable number of steps.
 */
export function timing<Name extends CalculatorName>(calculator: Name, input: Inputs[Name]): Answers[Name] {
  return calculators[calculator](input)
}
