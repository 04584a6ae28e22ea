import type { Words } from '../catalogue.ts'

export const verdict: Words['verdict'] = {
  headline: (option, lead) => `${option}: ${lead} Punkte je Match`,
  level: (option, other) => `„${option}“ und „${other}“ liegen gleichauf`,
  alone: 'Es gibt noch nichts zum Vergleichen.',
  chance: (chance) => `die bessere Wahl mit einer Chance von ${chance} über das, was ihr für möglich haltet`,
  matches: (option, share) => `vor „${option}“ in ${share} der einzelnen Matches`,
  believed: (low, high, likely) => `Ihr haltet ${low} bis ${high} für möglich, am ehesten ${likely}.`,
  never: (unknown, low, high) => `Zwischen ${low} und ${high} hängt die Antwort nirgends an „${unknown}“.`,
  turns: (option, unknown, more, value) =>
    `Die Antwort wechselt zu „${option}“, wenn „${unknown}“ ${more ? 'mehr' : 'weniger'} als ${value} ist`,
  jump: ' (ein Sprung: dort ändert sich die beste Spielweise)',
  measure: {
    none: (least) => `Keine Messung einer einzelnen Unbekannten ist auch nur ${least} Punkte je Match wert.`,
    best: (unknown, times, points) =>
      `Miss „${unknown}“ ${times}-mal, bevor ihr entscheidet: das ist ${points} Punkte je Match wert.`,
  },
}
