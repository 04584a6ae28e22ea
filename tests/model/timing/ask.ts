import { type CalculatorName, type Inputs, timing } from '../../../src/model/timing/index.ts'

/** The answer of a mechanism that can do it. */
export function done<Name extends CalculatorName>(name: Name, input: Inputs[Name]) {
  const told = timing(name, input)
  if (!told.possible) throw new Error(told.why.message)
  return told as Extract<typeof told, { possible: true }>
}

/** Why a mechanism can not. */
export function why<Name extends CalculatorName>(name: Name, input: Inputs[Name]): { code: string; message: string } {
  const told = timing(name, input)
  if (told.possible) throw new Error(`it takes ${told.seconds} s`)
  return told.why
}

export const codes = ({ warnings }: { warnings: { code: string }[] }) => warnings.map(({ code }) => code)
