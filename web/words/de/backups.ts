import type { backups as english } from '../en/backups.ts'

/** Kopien der Datenbank. */
export const backups: typeof english = {
  title: 'Kopien der Datenbank',
  what: 'die Kopien',
  notLoaded: 'Die Kopien konnten nicht aufgelistet werden',
  how: 'Der Server kopiert seine ganze Datenbank von selbst, während sie benutzt wird. Eine Kopie ist geprüft, wenn sie anderswo geöffnet wurde und jede Anzahl und jede Prüfsumme stimmte.',
  elsewhere:
    'Die Datenbank dieses Servers ist PostgreSQL. Sie wird mit ihren eigenen Mitteln kopiert: wer sie betreibt, weiß, wo die Kopien sind und wann zuletzt eine versucht wurde.',
  make: 'Jetzt eine Kopie machen',
  making: 'Eine Kopie wird gemacht …',
  proveNewest: 'Die neueste prüfen',
  proving: 'Die Kopie wird anderswo geöffnet und verglichen …',
  none: 'Noch gibt es keine Kopie.',
  newest: (at) => `Die neueste Kopie ist vom ${at}.`,
  lastProof: (at, rows) => `Zuletzt wurde am ${at} eine geprüft und war vollständig, mit ${rows} Zeilen.`,
  neverProven: 'Noch wurde keine geprüft.',
  made: 'Gemacht',
  why: 'Warum',
  rows: 'Zeilen',
  size: 'Größe',
  proof: 'Prüfung',
  reasons: {
    schedule: 'nach Plan',
    button: 'hier verlangt',
    command: 'durch Befehl',
    migration: 'vor einer neuen Version',
    restore: 'vor dem Zurückholen',
  },
  noManifest: 'ihre Liste der Anzahlen fehlt',
  megabytes: (size) => `${size} MB`,
  untried: 'noch nicht versucht',
  isWhole: (at) => `vollständig, ${at}`,
  notWhole: (at) => `nicht vollständig, ${at}:`,
  prove: 'Prüfen',
  proveOf: (at) => `Die Kopie vom ${at} prüfen`,
  more: (count) => `${count} weitere zeigen`,
  restore:
    'Zurückgeholt wird am Rechner des Servers: den Server anhalten, dann listet npm run backups die Kopien auf, und npm run restore setzt eine ein. Einige gehören auch auf einen anderen Rechner: mit der Platte ginge beides verloren.',
}
