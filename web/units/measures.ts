import { words } from '../words/catalogue.ts'
import type { Measure, System, Unit } from './quantities.ts'
import { isBare, readQuantity } from './read.ts'

// Exact by definition: NIST SP 811, appendix B.8 (pound-force, inch); psi, cubic inch and cubic foot follow from them.
const inch = 0.0254
const pound = 0.45359237
const poundForce = 4.4482216152605
const turn = 2 * Math.PI

/** Standard atmosphere (Pa): what a gauge leaves out. ISO 2533. */
export const atmosphere = 101_325

/** Names of the catalogue's sentences about what can not be read. */
export type MeasureName =
  | 'rotation'
  | 'torque'
  | 'pressure'
  | 'volume'
  | 'airFlow'
  | 'inertia'
  | 'conductance'
  | 'voltage'
  | 'current'
  | 'angle'
  | 'turning'
  | 'force'
  | 'energy'
  | 'resistance'
  | 'density'
  | 'temperature'

export type Readable = { readonly [written: string]: number | readonly [factor: number, offset: number] }

const number = /^([+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?)(.*)$/i

/** A unit as people write it, in one way: small letters, · between factors, no spaces, plain exponents. */
const plainUnit = (text: string): string =>
  text
    .toLowerCase()
    .trim()
    .replace(/(\w)\s+(?=[a-z])/g, '$1·')
    .replace(/\s+/g, '')
    .replace(/[⋅*.]/g, '·')
    .replaceAll('^', '')
    .replaceAll('²', '2')
    .replaceAll('³', '3')

/** A measure with its units: what is shown in each system, and what can be read, by factor and zero in SI. */
export function measure(name: MeasureName, metric: Unit, inchPound: Unit, readable: Readable): Measure {
  const shown: Record<System, Unit> = { metric, inchPound }
  return {
    metric,
    inchPound,
    read: (text, system) => {
      const [, digits, written] = number.exec(text.trim().replace('\u2212', '-')) ?? []
      if (digits === undefined) return null
      const value = Number(digits.replace(',', '.'))
      const unit = plainUnit(written!)
      if (unit === '') return Number((value * shown[system].factor + (shown[system].offset ?? 0)).toPrecision(12))
      if (!Object.hasOwn(readable, unit)) return null
      const found = readable[unit]!
      const [factor, offset] = typeof found === 'number' ? [found, 0] : found
      return Number((value * factor + offset).toPrecision(12))
    },
    refuse: (text) => words().parts.noMeasure(text, name),
  }
}

/** Where both systems of units say the same. */
export const alike = (name: MeasureName, unit: Unit, readable: Readable): Measure => measure(name, unit, unit, readable)

export const rotation = alike(
  'rotation',
  { symbol: 'rpm', factor: turn / 60, digits: 1 },
  { rpm: turn / 60, '1/min': turn / 60, 'min-1': turn / 60, 'u/min': turn / 60, 'rad/s': 1, '°/s': turn / 360 },
)

const inchPounds = poundForce * inch

export const torque = measure(
  'torque',
  { symbol: 'N·m', factor: 1, digits: 4 },
  { symbol: 'lbf·in', factor: inchPounds, digits: 3 },
  {
    n·m: 1,
    nm: 1,
    n·cm: 0.01,
    ncm: 0.01,
    lbf·in: inchPounds,
    lb·in: inchPounds,
    in·lb: inchPounds,
    in·lbf: inchPounds,
    lbf·ft: 12 * inchPounds,
    lb·ft: 12 * inchPounds,
    ft·lb: 12 * inchPounds,
    ft·lbf: 12 * inchPounds,
    oz·in: inchPounds / 16,
    ozf·in: inchPounds / 16,
  },
)

const psi = poundForce / inch ** 2
const gauge = (factor: number) => [factor, atmosphere] as const

/** Absolute, whoever types says otherwise: a gauge's reading has a g behind its unit. */
export const pressure = measure(
  'pressure',
  { symbol: 'kPa(a)', factor: 1000, digits: 2 },
  { symbol: 'psia', factor: psi, digits: 2 },
  {
    pa: 1,
    kpa: 1000,
    'kpa(a)': 1000,
    kpa·abs: 1000,
    mpa: 1e6,
    bar: 1e5,
    bara: 1e5,
    'bar(a)': 1e5,
    bar·abs: 1e5,
    psi,
    psia: psi,
    'psi(a)': psi,
    psi·abs: psi,
    kpag: gauge(1000),
    'kpa(g)': gauge(1000),
    kpa·gauge: gauge(1000),
    barg: gauge(1e5),
    'bar(g)': gauge(1e5),
    bar·gauge: gauge(1e5),
    psig: gauge(psi),
    'psi(g)': gauge(psi),
    psi·gauge: gauge(psi),
  },
)

export const volume = measure(
  'volume',
  { symbol: 'l', factor: 1e-3, digits: 4 },
  { symbol: 'in³', factor: inch ** 3, digits: 2 },
  { l: 1e-3, dm3: 1e-3, ml: 1e-6, cm3: 1e-6, m3: 1, in3: inch ** 3, cu·in: inch ** 3, ft3: (12 * inch) ** 3 },
)

const cubicFeet = (12 * inch) ** 3 / 60

/** Free air, counted at 100 kPa. */
export const airFlow = measure(
  'airFlow',
  { symbol: 'l/min', factor: 1e-3 / 60, digits: 3 },
  { symbol: 'ft³/min', factor: cubicFeet, digits: 4 },
  { 'l/min': 1e-3 / 60, 'l/s': 1e-3, 'm3/h': 1 / 3600, 'm3/min': 1 / 60, 'm3/s': 1, 'ft3/min': cubicFeet },
)

export const inertia = measure(
  'inertia',
  { symbol: 'kg·cm²', factor: 1e-4, digits: 5, significant: 5 },
  { symbol: 'lb·in²', factor: pound * inch ** 2, digits: 5, significant: 5 },
  {
    kg·m2: 1,
    kg·cm2: 1e-4,
    g·m2: 1e-3,
    g·cm2: 1e-7,
    lb·in2: pound * inch ** 2,
    lb·ft2: pound * (12 * inch) ** 2,
    oz·in2: (pound * inch ** 2) / 16,
  },
)

/** Sonic conductance of ISO 6358. */
export const conductance = alike(
  'conductance',
  { symbol: 'dm³/(s·bar)', factor: 1e-8, digits: 4 },
  { 'dm3/(s·bar)': 1e-8, 'l/(s·bar)': 1e-8, 'm3/(s·pa)': 1 },
)

export const voltage = alike('voltage', { symbol: 'V', factor: 1, digits: 3 }, { v: 1, mv: 0.001 })

export const current = alike('current', { symbol: 'A', factor: 1, digits: 3 }, { a: 1, ma: 0.001 })

const small: Record<System, Unit> = {
  metric: { symbol: 'mm', factor: 0.001, digits: 3 },
  inchPound: { symbol: 'in', factor: inch, digits: 4 },
}

/** A length of the size of a part: a bare number is in millimetres, or in inches; every other unit of length is read too. */
export const partLength: Measure = {
  ...small,
  read: (text, system) => readQuantity(isBare(text) ? `${text} ${small[system].symbol}` : text, 'length', system),
  refuse: (text) => words().units.noQuantity(text, 'length'),
}
