import type { Words } from '../catalogue.ts'

const smaller =
  'kleiner wird sie mit weniger Spielstücken auf einmal, weniger Standpunkten und Arten zu punkten, weniger Streuung bei dem, was einmal je Stück geschieht, oder weniger gemessenen Zeiten'

export const worker: Words['worker'] = {
  tooLong: (seconds) =>
    `Diese Rechnung würde zu lange dauern und wurde nach ${seconds < 120 ? `${seconds} s` : `${seconds / 60} Minuten`} abgebrochen; ${smaller}.`,
  tooLarge: `Diese Rechnung bräuchte mehr Speicher, als dein Browser ihr gibt, und wurde abgebrochen; ${smaller}.`,
  stopped: 'Die Rechnung wurde abgebrochen.',
  notJoined: 'Die Ziehungen ließen sich nicht zusammenfügen.',
  notStarted: 'Die Rechnung ließ sich nicht starten. Lade die Seite neu.',
}
