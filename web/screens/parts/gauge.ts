import { atmosphere, pressure } from '../../units/measures.ts'
import { unitsShown } from '../../units/system.ts'
import { writeQuantity } from '../../units/write.ts'
import { words } from '../../words/catalogue.ts'

/** A difference of pressures, in words with one decimal. */
const difference = {
  ...pressure,
  metric: { ...pressure.metric, digits: 1 },
  inchPound: { ...pressure.inchPound, digits: 1 },
}

/** A difference of pressures (Pa) in the units shown, without the letter that says absolute. */
function differenceWords(over: number): string {
  const system = unitsShown()
  return `${writeQuantity(over, difference, system)}\u00a0${system === 'metric' ? 'kPa' : 'psi'}`
}

/** What a gauge leaves out, in the units shown. */
export const atmosphereWords = (): string => differenceWords(atmosphere)

/** What a gauge shows at an absolute pressure. */
export function gaugeWords(absolute: number): string {
  const texts = words().parts.form
  const over = absolute - atmosphere
  return over < 0 ? texts.gaugeNone : texts.gauge(differenceWords(over))
}
