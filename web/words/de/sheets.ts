import type { Words } from '../catalogue.ts'

export const sheets: Words['sheets'] = {
  title: 'Bögen aus Papier',
  intro:
    'Für ein Telefon ohne Strom: die Felder des Telefons, drei Roboter je Seite. Danach wird jeder Bogen auf der Seite zum Abgeben eingetippt, in der Reihenfolge seiner Nummern.',
  loading: 'die Veranstaltung',
  notLoaded: 'Die Veranstaltung konnte nicht geladen werden',
  phase: 'Phase',
  phases: { practice: 'Übung', qualification: 'Qualifikation', playoff: 'Endrunde' },
  from: 'Ab Match',
  count: 'Wie viele Matches',
  blank: 'Ohne Match und Teams',
  print: 'Drucken',
  noMatch: 'Der Zeitplan kennt dieses Match nicht. Wähle ein anderes oder drucke Bögen ohne Match und Teams.',
  pages: (pages) => `${pages} Seiten, schwarz-weiß, auf A4 oder Letter.`,
  fields: {
    absent: 'Nicht angetreten',
    left: 'Start verlassen',
    lost: 'Verlorene Sekunden',
    note: 'Notiz',
    period: { auto: 'autonom', teleop: 'gesteuert' },
    count: {
      scored: (goal, period) => `${goal} getroffen, ${period}`,
      missed: (goal, period) => `${goal} verfehlt, ${period}`,
    },
    finish: { attempted: 'Abschluss versucht', achieved: 'Abschluss erreicht' },
    foul: { minor: 'Leichte Fouls', major: 'Schwere Fouls' },
  },
  paper: {
    page: (match, alliance) => `Bogen ${match} ${alliance}`,
    alliances: { red: 'Rot', blue: 'Blau' },
    matchBlank: 'Match ________',
    robot: (place) => `Position ${place} · Team`,
    scout: 'Geschrieben von ________________',
    how: 'Beim Zuschauen Striche machen, danach die Zahl daneben schreiben. Ja ist 1. Abschlüsse:',
    finish: (number, name) => `${number} ${name}`,
  },
}
