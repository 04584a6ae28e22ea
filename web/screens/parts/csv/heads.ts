import {
  airFlow,
  conductance,
  current,
  inertia,
  partLength,
  pressure,
  rotation,
  torque,
  voltage,
  volume,
} from '../../../units/measures.ts'
import type { Measured } from '../../../units/quantities.ts'
import { readQuantity } from '../../../units/read.ts'

/** How a heading names a unit, and how people write it. */
type Ending = readonly [head: string, written: string]

/** The units that a heading may end with, by what is measured; the first is SI, which is written. */
const endings: readonly (readonly [Measured, readonly Ending[]])[] = [
  [voltage, [['v', 'V']]],
  [current, [['a', 'A']]],
  [
    rotation,
    [
      ['rad_per_s', 'rad/s'],
      ['rpm', 'rpm'],
    ],
  ],
  [
    torque,
    [
      ['n_m', 'N·m'],
      ['lbf_in', 'lbf·in'],
      ['lbf_ft', 'lbf·ft'],
    ],
  ],
  [
    inertia,
    [
      ['kg_m2', 'kg·m²'],
      ['kg_cm2', 'kg·cm²'],
      ['lb_in2', 'lb·in²'],
    ],
  ],
  [
    partLength,
    [
      ['m', 'm'],
      ['mm', 'mm'],
      ['in', 'in'],
    ],
  ],
  [
    'mass',
    [
      ['kg', 'kg'],
      ['g', 'g'],
      ['lb', 'lb'],
    ],
  ],
  [
    conductance,
    [
      ['m3_per_s_pa', 'm³/(s·Pa)'],
      ['dm3_per_s_bar', 'dm³/(s·bar)'],
    ],
  ],
  [
    volume,
    [
      ['m3', 'm³'],
      ['l', 'l'],
      ['in3', 'in³'],
    ],
  ],
  [
    pressure,
    [
      ['pa_absolute', 'Pa'],
      ['kpa_absolute', 'kPa'],
      ['bar_absolute', 'bar'],
      ['psi_absolute', 'psi'],
      ['kpa_gauge', 'kPa(g)'],
      ['bar_gauge', 'bar(g)'],
      ['psi_gauge', 'psi(g)'],
    ],
  ],
  [airFlow, [['m3_per_s', 'm³/s']]],
]

const unitsOf = new Map(endings)

const endingsOf = (quantity: Measured | undefined): readonly Ending[] => (quantity && unitsOf.get(quantity)) ?? []

/** The heading that is written: the column's name with its SI unit. */
export function headOf(column: string, quantity: Measured | undefined): string {
  const [si] = endingsOf(quantity)
  return si ? `${column}_${si[0]}` : column
}

/** The SI unit as people write it, for the description of a file. */
export const siOf = (quantity: Measured | undefined): string | undefined => endingsOf(quantity)[0]?.[1]

/** Turns a number under this heading into SI (null: it can not be); null where the heading is none of this column. */
export function readerFor(
  head: string,
  column: string,
  quantity: Measured | undefined,
): ((value: number) => number | null) | null {
  if (head === headOf(column, quantity)) return (value) => value
  const found = endingsOf(quantity).find(([name]) => head === `${column}_${name}`)
  return quantity && found ? (value) => readQuantity(`${value} ${found[1]}`, quantity, 'metric') : null
}

/** The one heading of a compressor's points. */
export const flowHead = 'flow_points_pa_absolute_m3_per_s'
