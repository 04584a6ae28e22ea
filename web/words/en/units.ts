const like: Record<'length' | 'mass' | 'speed' | 'acceleration', string> = {
  length: 'a length; write it like 0.9 m, 36 in or 3 ft 2 in',
  mass: 'a mass; write it like 5.4 kg or 12 lb',
  speed: 'a speed; write it like 3.5 m/s or 11 ft/s',
  acceleration: 'an acceleration; write it like 3 m/s² or 10 ft/s²',
}

export const units = {
  label: 'Units',
  systems: { metric: 'metric (m, kg)', inchPound: 'inch–pound (in, lb)' },
  none: 'Please give a number.',
  noNumber: (text: string) => `‘${text}’ is not a number; write it like 1.5.`,
  noQuantity: (text: string, quantity: keyof typeof like) => `‘${text}’ is not ${like[quantity]}.`,
  whole: (text: string) => `A whole number is needed, not ${text}.`,
  atLeast: (limit: string, text: string) => `At least ${limit}, not ${text}.`,
  moreThan: (limit: string, text: string) => `More than ${limit}, not ${text}.`,
  atMost: (limit: string, text: string) => `At most ${limit}, not ${text}.`,
  fewTimes: (count: number) => `At least 3 measured times are needed, got ${count}.`,
}
