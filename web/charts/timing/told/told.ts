import type { Electric } from '../../../../src/model/timing/index.ts'
import { words } from '../../../words/catalogue.ts'
import { plain } from '../../../words/format.ts'
import type { Moment } from '../moment.ts'

export type Measures = [name: string, value: string][]

/** A mechanism in words: what is drawn, its key measures, and how it stands at a moment. */
export interface Told<Curves> {
  sentences: string[]
  measures: Measures
  state(curves: Curves, at: Moment): string[]
}

/** Rows whose number is known. */
export const known = (rows: readonly (readonly [string, string | null])[]): Measures =>
  rows.flatMap(([name, value]) => (value === null ? [] : [[name, value] as [string, string]]))

/** A number in words; null where it is not known. */
export const ifKnown = (value: number | null | undefined, say: (value: number) => string): string | null =>
  typeof value === 'number' ? say(value) : null

export const saidMotors = ({ motors, motor, reduction }: Electric<number>): string =>
  words().timingCharts.behind(motors, motor.name, plain(reduction, 2))
