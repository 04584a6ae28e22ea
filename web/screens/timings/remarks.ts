import type { Remark } from '../../../src/model/timing/index.ts'
import { current, partLength, pressure, rotation, torque, voltage } from '../../units/measures.ts'
import { angle, energy, force } from '../../units/mechanics.ts'
import { type Measured, unitOf } from '../../units/quantities.ts'
import { unitsShown } from '../../units/system.ts'
import { sayQuantity } from '../../units/write.ts'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'

type Kind = Measured | 'share' | 'seconds' | 'count'

const all = (kind: Kind, names: readonly string[]): [string, Kind][] => names.map((name) => [name, kind])

/** What each number of a remark measures. */
const measures = new Map<string, Kind>([
  ...all(force, ['force', 'resistance', 'load', 'grip', 'drag']),
  ...all(torque, ['torque', 'needed', 'gravity']),
  ...all(angle, ['angle', 'from', 'to', 'low', 'high']),
  ...all('speed', ['speed', 'peak', 'top']),
  ...all(energy, ['energy']),
  ...all(pressure, ['pressure', 'ambient', 'working', 'stored', 'most', 'after', 'on', 'off']),
  ...all('length', ['distance', 'piece', 'size', 'lack', 'miss']),
  ...all(partLength, ['length', 'travel']),
  ...all(voltage, ['voltage', 'lowest']),
  ...all(current, ['current', 'limit']),
  ...all('share', ['share']),
  ...all('seconds', ['seconds', 'longest']),
  ...all('count', ['cycle', 'ratio']),
])

/** Where a name means something else. */
const others: { readonly [code: string]: { readonly [name: string]: Kind } } = {
  tooWeakToTurn: { drag: torque },
  neverReachesSpeed: { target: rotation, top: rotation },
  shotEmptiesWheel: { needed: energy },
  aimsTooLow: { needed: angle },
  cylinderDoesNotFit: { low: partLength, high: partLength },
}

/** Codes that mean two things are told apart by their numbers. */
function sentenceName({ code, values }: Remark): string {
  if (code === 'tooWeakToTurn' && 'angle' in values) return 'tooWeakToTurnAt'
  if (code === 'neverArrives' && 'speed' in values) return 'neverArrivesFlight'
  return code === 'noPressure' && 'working' in values ? 'noPressureWorking' : code
}

/** Enough digits to act on, and no more than a mechanism is known to. */
function digitsOf(shown: number): number {
  return shown === 0 ? 0 : Math.max(0, 2 - Math.floor(Math.log10(Math.abs(shown))))
}

/** A measured number to three digits, with its unit. */
export function said(value: number, quantity: Measured): string {
  const { factor, offset = 0 } = unitOf(quantity, unitsShown())
  return sayQuantity(value, quantity, undefined, digitsOf((value - offset) / factor))
}

function written(value: number, kind: Kind): string {
  if (kind === 'share') return `${plain(value, value < 10 ? 1 : 0)}\u00a0%`
  if (kind === 'seconds') return `${plain(value, 2)}\u00a0s`
  return kind === 'count' ? plain(value, 2) : said(value, kind)
}

/** A remark in the reader's language and units; as it came where the catalogue does not know its code. */
export function remarkWords(remark: Remark): string {
  const { timingRemarks } = words()
  const name = sentenceName(remark)
  if (!Object.hasOwn(timingRemarks, name)) return remark.message
  return timingRemarks[name as keyof typeof timingRemarks].replace(/\{(\w+)\}/g, (_, part: string) => {
    const kind = others[remark.code]?.[part] ?? measures.get(part)
    const value = remark.values[part]
    return kind === undefined || value === undefined ? String(value) : written(value, kind)
  })
}
