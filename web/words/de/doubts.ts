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
  usual: 'Mal den üblichen Unterschied',
  times: (often) => `${often} ×`,
  without: {
    ask: (records) =>
      records === 1 ? 'Was ohne die Aufzeichnung gelten würde' : `Was ohne die ${records} Aufzeichnungen gelten würde`,
    what: 'was ohne sie gelten würde',
    trouble: 'Was ohne sie gelten würde, konnte nicht berechnet werden',
    with: 'Mit',
    without: 'Ohne',
    team: (team, now, then) => `Team ${team}: mit aus ${now} eigenen Matches, ohne aus ${then}`,
    matches: (shown, all) =>
      shown === all ? 'Kommende Matches' : `Die nächsten ${shown} von ${all} kommenden Matches`,
    noneComing: 'Von diesen Robotern steht kein Match mehr aus.',
    wins: (side) => `${side}: Siegchance`,
    score: (side) => `${side}: erwartete Punkte`,
    how: (teams) =>
      `„Ohne“ lässt die Aufzeichnung aus allem weg, was von ${teams} und der Veranstaltung geglaubt wird; ein Match ohne andere Aufzeichnung des Roboters hat dann niemand gesehen. Beide Vorhersagen spielen 4.000 Matches mit demselben Glück; ein Unentschieden zählt als halber Sieg. Weggelassen wird hier nichts: eine Leitung berichtigt die Aufzeichnung oder lässt eine andere zählen.`,
  },
}
