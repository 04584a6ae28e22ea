import type { Part } from '../../../src/model/timing/parts.ts'
import { words } from '../../words/catalogue.ts'
import type { PartKind } from './numbers.ts'

/** Round numbers of the size that such parts have, so that a new part can be saved; its source says what they are. */
const placeholders: { readonly [Kind in PartKind]: object } = {
  motor: { nominalVoltage: 12, freeSpeed: 600, freeCurrent: 2, stallTorque: 2, stallCurrent: 100 },
  cylinder: { bore: 0.025, rod: 0.01, stroke: 0.1 },
  valve: { conductance: 1e-8, criticalRatio: 0.3 },
  compressor: {
    flow: [
      [100_000, 0.0005],
      [1_000_000, 0.0001],
    ],
  },
  tank: { volume: 0.0005, highestPressure: 1_000_000 },
  wheel: { diameter: 0.1, mass: 0.2, inertia: 0.0003, friction: 1 },
}

/** A part to begin with; `date`: year-month-day. */
export const firstPart = (kind: PartKind, of: { id: string; name: string; date: string }): Part =>
  ({ kind, ...of, source: words().parts.fresh.source, ...placeholders[kind] }) as unknown as Part
