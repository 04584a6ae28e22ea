import type { Words } from '../catalogue.ts'

export const durations: Words['durations'] = {
  kinds: {
    fixed: 'immer gleich',
    range: 'niedrig, üblich, hoch',
    lognormal: 'Median und Streuung',
    samples: 'gemessene Zeiten',
  },
  kind: 'Angegeben als',
  average: (value) => `im Mittel ${value}`,
  time: 'Zeit',
  low: 'Niedrig',
  likely: 'Üblich',
  high: 'Hoch',
  median: 'Median',
  spread: 'Streuung',
  spreadHelp: '2 von 3 Fahrten liegen innerhalb dieses Faktors',
  times: 'Gemessene Zeiten, s',
  timesHelp: 'Mindestens drei, mit Leerzeichen dazwischen',
}
