/** What a number of a document measures, where that has another unit in inch–pound. Documents keep SI. */
export type Quantity = 'length' | 'mass' | 'speed' | 'acceleration'

export type System = 'metric' | 'inchPound'

export interface Unit {
  symbol: string
  /** How much of the SI unit one of it is. */
  factor: number
  /** What its zero is in SI, where the two zeros differ: temperatures. */
  offset?: number
  /** Decimals beyond which nobody measures. */
  digits: number
  /** Digits in all beyond which nobody measures, where values lie orders of magnitude apart. */
  significant?: number
}

/** What only a few screens measure: it brings its units along, so that the first page does not load them. */
export interface Measure extends Readonly<Record<System, Unit>> {
  /** SI, or null where the text says no such thing. A bare number is in the unit shown. */
  read(text: string, system: System): number | null
  /** The sentence about a text that says no such thing. */
  refuse(text: string): string
}

export type Measured = Quantity | Measure

// Exact by definition: the international inch and pound of 1959 (NIST SP 811, appendix B.8).
const inch = 0.0254
const foot = 0.3048
const pound = 0.45359237

/** The unit in which each quantity is shown, and in which a bare number is read. */
export const units: Readonly<Record<System, Readonly<Record<Quantity, Unit>>>> = {
  metric: {
    length: { symbol: 'm', factor: 1, digits: 4 },
    mass: { symbol: 'kg', factor: 1, digits: 3 },
    speed: { symbol: 'm/s', factor: 1, digits: 3 },
    acceleration: { symbol: 'm/s²', factor: 1, digits: 3 },
  },
  inchPound: {
    length: { symbol: 'in', factor: inch, digits: 2 },
    mass: { symbol: 'lb', factor: pound, digits: 2 },
    speed: { symbol: 'ft/s', factor: foot, digits: 2 },
    acceleration: { symbol: 'ft/s²', factor: foot, digits: 2 },
  },
}

export const unitOf = (quantity: Measured, system: System): Unit =>
  typeof quantity === 'string' ? units[system][quantity] : quantity[system]

/** Every unit that may be typed, by quantity: how it is written in small letters, and its factor to SI. */
export const readable: Readonly<Record<Quantity, { readonly [written: string]: number }>> = {
  length: {
    mm: 0.001,
    cm: 0.01,
    dm: 0.1,
    m: 1,
    in: inch,
    inch: inch,
    inches: inch,
    '"': inch,
    '″': inch,
    '”': inch,
    "''": inch,
    zoll: inch,
    ft: foot,
    foot,
    feet: foot,
    "'": foot,
    '′': foot,
    '’': foot,
    fuß: foot,
    yd: 0.9144,
  },
  mass: { g: 0.001, kg: 1, t: 1000, lb: pound, lbs: pound, oz: pound / 16 },
  speed: { 'm/s': 1, 'cm/s': 0.01, 'km/h': 1 / 3.6, 'ft/s': foot, fps: foot, 'in/s': inch, mph: 0.44704 },
  acceleration: {
    'm/s²': 1,
    'm/s2': 1,
    'm/s^2': 1,
    'ft/s²': foot,
    'ft/s2': foot,
    'ft/s^2': foot,
    'in/s²': inch,
    'in/s2': inch,
    'in/s^2': inch,
  },
}

/** The unit that a last bare number has after another one: 3 ft 2 is 3 ft 2 in. */
export const smaller: readonly (readonly [larger: number, smaller: number])[] = [
  [foot, inch],
  [0.9144, foot],
  [pound, pound / 16],
  [1, 0.01],
]
