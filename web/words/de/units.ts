import type { Words } from '../catalogue.ts'

const like: Record<'length' | 'mass' | 'speed' | 'acceleration', string> = {
  length: 'keine Länge; schreib sie wie 0,9 m, 36 in oder 3 ft 2 in',
  mass: 'keine Masse; schreib sie wie 5,4 kg oder 12 lb',
  speed: 'keine Geschwindigkeit; schreib sie wie 3,5 m/s oder 11 ft/s',
  acceleration: 'keine Beschleunigung; schreib sie wie 3 m/s² oder 10 ft/s²',
}

export const units: Words['units'] = {
  label: 'Einheiten',
  systems: { metric: 'metrisch (m, kg)', inchPound: 'Zoll und Pfund (in, lb)' },
  none: 'Bitte gib eine Zahl an.',
  noNumber: (text) => `„${text}“ ist keine Zahl; schreib sie wie 1,5.`,
  noQuantity: (text, quantity) => `„${text}“ ist ${like[quantity]}.`,
  whole: (text) => `Hier steht eine ganze Zahl, nicht ${text}.`,
  atLeast: (limit, text) => `Mindestens ${limit}, nicht ${text}.`,
  moreThan: (limit, text) => `Mehr als ${limit}, nicht ${text}.`,
  atMost: (limit, text) => `Höchstens ${limit}, nicht ${text}.`,
  fewTimes: (count) => `Mindestens 3 gemessene Zeiten werden gebraucht, hier sind es ${count}.`,
}
