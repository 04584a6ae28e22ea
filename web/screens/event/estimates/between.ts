import type { Estimate } from '../../../../src/model/scouting/estimates/types.ts'
import { words } from '../../../words/catalogue.ts'

/** 'a to b': where the expectation lies with 80 %. */
export const between = (
  { interval80: [low, high] }: Pick<Estimate, 'interval80'>,
  written: (value: number) => string,
): string => words().estimates.between(written(low), written(high))
