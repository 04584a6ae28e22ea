import type { Words } from '../catalogue.ts'

export const doubts: Words['doubts'] = {
  title: 'Zweifel',
  what: 'die Zweifel',
  trouble: 'Die Zweifel konnten nicht berechnet werden',
  intro:
    'Aufzeichnungen, die nicht zu den offiziellen Ergebnissen oder zueinander passen, die größten zuerst. Sie zählen, wie sie sind, bis eine Leitung nachgesehen hat.',
  none: 'Nichts zu bezweifeln',
  noneHow:
    'Alle Aufzeichnungen passen zu den offiziellen Ergebnissen und zueinander so gut wie bei dieser Veranstaltung üblich.',
  look: (records) => (records === 1 ? 'Die Aufzeichnung ansehen' : `Die ${records} Aufzeichnungen ansehen`),
  differs: (teams) =>
    `Die Aufzeichnungen von ${teams} und das offizielle Ergebnis liegen weiter auseinander als üblich.`,
  swapped: (scout, team, goals) =>
    `${team}, aufgezeichnet von ${scout}, passt zum offiziellen Ergebnis, wenn ${goals} vertauscht werden.`,
  wrongRobot: (scout, team, fits) => `Was ${scout} von ${team} aufgezeichnet hat, passt viel besser zu ${fits}.`,
  disagree: (team, goal, low, high) => `Zwei Aufzeichnungen von ${team} nennen ${low} und ${high} Stücke bei ${goal}.`,
  swaps: (scout, goals, records) => `${scout} verwechselt wohl ${goals}, nach ${records} Aufzeichnungen zusammen.`,
  tooFew: (scout, pieces, goal) => `${scout} zählt je Aufzeichnung ${pieces} Stücke zu wenig bei ${goal}.`,
  tooMany: (scout, pieces, goal) => `${scout} zählt je Aufzeichnung ${pieces} Stücke zu viel bei ${goal}.`,
  evidence: 'Offizielle und Beobachter nebeneinander',
  category: 'Was',
  piecesAt: (goal) => `Stücke bei ${goal}`,
  categories: { autonomous: 'Punkte der Autonomphase', finishes: 'Punkte der Abschlüsse' },
  official: 'Offizielle',
  scouted: 'Beobachter',
  usual: 'Übliche Unterschiede',
  times: (often) => `${often} ×`,
}
