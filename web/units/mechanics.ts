import { alike, measure } from './measures.ts'

/** What mechanisms measure beyond their parts: angles, forces, energies, and the air around them. */

// Exact by definition: NIST SP 811, appendix B.8 (pound-force, foot, degree Fahrenheit).
const pound = 0.45359237
const poundForce = 4.4482216152605
const foot = 0.3048
const degree = Math.PI / 180

export const angle = alike(
  'angle',
  { symbol: '°', factor: degree, digits: 2 },
  { '°': degree, deg: degree, grad: degree, rad: 1 },
)

/** Of what turns by less than a turn; wheels and motors have `rotation`. */
export const turning = alike(
  'turning',
  { symbol: '°/s', factor: degree, digits: 1 },
  { '°/s': degree, 'deg/s': degree, 'rad/s': 1, rpm: Math.PI / 30 },
)

export const force = measure(
  'force',
  { symbol: 'N', factor: 1, digits: 2 },
  { symbol: 'lbf', factor: poundForce, digits: 3 },
  { n: 1, kn: 1000, lbf: poundForce, lb: poundForce },
)

export const energy = measure(
  'energy',
  { symbol: 'J', factor: 1, digits: 2 },
  { symbol: 'ft·lbf', factor: foot * poundForce, digits: 2 },
  { j: 1, ft·lbf: foot * poundForce, ft·lb: foot * poundForce },
)

export const resistance = alike(
  'resistance',
  { symbol: 'mΩ', factor: 0.001, digits: 3 },
  { mω: 0.001, ω: 1, mohm: 0.001, ohm: 1 },
)

export const density = measure(
  'density',
  { symbol: 'kg/m³', factor: 1, digits: 3 },
  { symbol: 'lb/ft³', factor: pound / foot ** 3, digits: 4 },
  { 'kg/m3': 1, 'g/l': 1, 'lb/ft3': pound / foot ** 3 },
)

const zeroCelsius = 273.15
/** The degree of Fahrenheit is 5/9 K, and its zero 32 of them below the ice point. */
const zeroFahrenheit = zeroCelsius - (32 * 5) / 9

export const temperature = measure(
  'temperature',
  { symbol: '°C', factor: 1, offset: zeroCelsius, digits: 1 },
  { symbol: '°F', factor: 5 / 9, offset: zeroFahrenheit, digits: 1 },
  { '°c': [1, zeroCelsius], c: [1, zeroCelsius], '°f': [5 / 9, zeroFahrenheit], f: [5 / 9, zeroFahrenheit], k: 1 },
)
