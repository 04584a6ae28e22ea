import { useMemo } from 'react'
import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import { settle } from '../../../src/model/timing/answer/settle.ts'
import type { Answers, Inputs, MechanismAnswer } from '../../../src/model/timing/index.ts'

type Calculator = Mechanism['calculator']
type Quantities<Name extends Calculator> = Extract<Answers[Name], { possible: true }>['quantities']
type Curves<Name extends Calculator> = Extract<Answers[Name], { possible: true }>['curves']

/** A mechanism at its likely numbers with what is known of its answer. */
export type Shown<Name extends Calculator = Calculator> = {
  [Each in Name]: {
    calculator: Each
    input: Inputs<number>[Each]
    quantities: Partial<Quantities<Each>>
    /** Null where it can not do it. */
    curves: Curves<Each> | null
  }
}[Name]

export function shownOf({ calculator, input }: Mechanism, answer: MechanismAnswer): Shown {
  return {
    calculator,
    input: settle(input).likely,
    quantities: 'quantities' in answer ? answer.quantities : {},
    curves: answer.possible ? answer.curves : null,
  } as Shown
}

export const useShown = (mechanism: Mechanism, answer: MechanismAnswer): Shown =>
  useMemo(() => shownOf(mechanism, answer), [mechanism, answer])
