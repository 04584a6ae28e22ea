import type { Inputs } from '../../../../src/model/timing/index.ts'
import type { Moment } from '../moment.ts'

/** What a drawing is given: likely numbers, what is known of the answer, and the moment that it shows. */
export interface Drawn<Name extends keyof Inputs, Quantities, Curves> {
  input: Inputs<number>[Name]
  /** As far as they are known: of a mechanism that can not do it only some. */
  quantities: Partial<Quantities>
  /** With their moment; null where nothing moves. */
  motion: { curves: Curves; at: Moment } | null
  width: number
  /** What is drawn, in words. */
  label: string
}

export type Measures = [name: string, value: string][]
