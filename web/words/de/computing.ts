import type { Allowed, compareSentences } from '../../../src/model/compare/sentences.ts'
import type { Blocker, Called, fieldSentences } from '../../../src/model/field/sentences.ts'
import type { planSentences } from '../../../src/model/plan/sentences.ts'
import type { Words } from '../catalogue.ts'

const place = ({ name, spot }: Called): string =>
  spot === undefined ? `„${name}“` : `„${name}“ (Standpunkt „${spot}“)`

/** After 'zu nah', in the dative. */
const blocker = (by: Blocker): string => ('border' in by ? 'am Rand des Feldes' : `am Hindernis „${by.obstacle}“`)

/** What outlines, routes and reach say. */
export const field: Pick<Words['problems'], keyof typeof fieldSentences> = {
  fewCorners: ({ count }) => `Ein Umriss braucht mindestens 3 Ecken, und dieser hat ${count}.`,
  manyCorners: ({ most, count }) => `Ein Umriss kann höchstens ${most} Ecken haben, und dieser hat ${count}.`,
  sameCorners: ({ one, other }) => `Die Ecken ${one} und ${other} sind derselbe Punkt.`,
  foldsBack: ({ corner }) => `An Ecke ${corner} läuft der Umriss auf sich selbst zurück.`,
  edgesCross: ({ one, other }) => `Die Kanten nach den Ecken ${one} und ${other} kreuzen oder berühren sich.`,
  noArea: () => 'Der Umriss schließt keine Fläche ein.',
  fieldTooFine: ({ count, most }) =>
    `Die Hindernisse des Feldes haben ${count} Ecken; Wege werden für höchstens ${most} berechnet.`,
  noSuchPlace: ({ id }) => `Das Spiel hat keinen Startplatz oder Standpunkt mit der Kennung „${id}“.`,
  noWay: ({ from, to, apart }) =>
    `Von ${place(from)} nach ${place(to)} gibt es keinen Weg: Keine Lücke ist breit genug für den Roboter, dessen Mitte ${apart} von Hindernissen und Rand fernbleibt.`,
  wayBlocked: ({ from, to, place: at, at: point, by, apart }) =>
    `Von ${place(from)} nach ${place(to)} gibt es keinen Weg: ${place(at)}, bei ${point.join(' längs und ')} quer, liegt zu nah ${blocker(by)} für den Roboter, dessen Mitte ${apart} davon fernbleibt.`,
  tooNear: ({ place: at, by, apart }) =>
    `${place(at)} liegt zu nah ${blocker(by)}: Die Mitte des Roboters bleibt ${apart} davon fern`,
  notReached: ({ from, to }) =>
    `Von ${place(from)} nach ${place(to)} gibt es keinen Weg: Keine Lücke ist breit genug für diesen Roboter`,
}

const nouns = { source: 'keine Quelle', goal: 'kein Ziel', finish: 'keinen Abschluss' }

/** What a plan and its legs refuse. */
export const plan: Pick<Words['problems'], keyof typeof planSentences> = {
  noRoutine: ({ routine }) => `Der Roboter hat keine Routine „${routine}“`,
  tooManyNodes: ({ most }) => `Der Plan bräuchte mehr als ${most} Orte und Ladungen`,
  tooManyStates: ({ states, most }) =>
    `Der Plan bräuchte ${states} Zustände, mehr als ${most}: Weniger Ladungen, Standpunkte oder Fassungsvermögen würden helfen`,
  legFromNowhere: ({ id }) => `Das Spiel hat keinen Startplatz oder Standpunkt mit der Kennung „${id}“`,
  legToNowhere: ({ noun, id }) => `Das Spiel hat ${nouns[noun]} „${id}“`,
  legToNoSpot: ({ place: of, spot }) => `„${of}“ hat keinen Standpunkt „${spot}“`,
  canNot: ({ what, id }) => `Der Roboter kann bei „${id}“ nicht ${what === 'collect' ? 'aufnehmen' : 'abschließen'}`,
  noEntryFor: ({ entry, goal }) => `Der Roboter hat keine Art ${entry}, beim Ziel „${goal}“ zu punkten`,
  notFromSpot: ({ entry, spot }) => `Die Art ${entry} wird nicht vom Standpunkt „${spot}“ aus gespielt`,
  twiceInNetwork: ({ stage }) => `Der Schritt „${stage}“ steht zweimal im Netz`,
  waitsForNothing: ({ stage, before }) => `Der Schritt „${stage}“ wartet auf „${before}“, den es hier nicht gibt`,
  loopInNetwork: ({ stage }) => `Der Schritt „${stage}“ wartet auf sich selbst: Das Netz hat einen Kreis`,
}

const allowed: Record<Allowed, string> = {
  'between 0 and 1': 'zwischen 0 und 1 liegen',
  'at least 0': 'mindestens 0 sein',
  'above 0': 'größer als 0 sein',
  'at least 1': 'mindestens 1 sein',
  'a whole number, at least 0': 'eine ganze Zahl und mindestens 0 sein',
  'a whole number, at least 1': 'eine ganze Zahl und mindestens 1 sein',
  'a multiple of 0.1 s, at least 0': 'ein Vielfaches von 0,1 s und mindestens 0 sein',
  'a finite number': 'eine endliche Zahl sein',
  'at least 0 s': 'mindestens 0 s sein',
  'a spread of at least 1': 'eine Streuung von mindestens 1 sein',
  finite: 'endlich sein',
}

/** What comparisons, their unknowns and their maps refuse. */
export const compare: Pick<Words['problems'], keyof typeof compareSentences> = {
  leadsElsewhere: () => 'muss zu „/game“ oder „/options“ führen',
  needsFactor: () => 'nennt eine Dauer: Wähle einen Faktor oder eine Summe, oder nenne eine ihrer Zahlen',
  negativeFactor: () => 'lässt sich nicht mit einem negativen Faktor malnehmen',
  namesNothing: () => 'nennt weder eine Zahl noch eine Dauer',
  fixedNumber: () => 'kann keine Unbekannte sein',
  mustBe: ({ allowed: what }) => `muss ${allowed[what]}`,
  keepsOrder: ({ low, likely, high }) =>
    `muss in der Dauer niedrig ≤ üblich ≤ hoch lassen, und das wäre ${low}, ${likely}, ${high}`,
  keepsPace: () => 'muss das Tempo immer bei mindestens 1 lassen',
  wouldBe: ({ found, why }) => `wäre ${found}, aber das ${why}`,
  misplaced: ({ input, value, pointer, why }) => `Unbekannte „${input}“ bei ${value}: „${pointer}“ ${why}.`,
  ofInput: ({ input, why }) => `Unbekannte „${input}“: ${why}`,
  notFinite: ({ input, value }) => `Unbekannte „${input}“ bei ${value}: muss endlich sein.`,
  wrongOrder: ({ input, low, likely, high }) =>
    `Bei der Unbekannten „${input}“ muss niedrig ≤ üblich ≤ hoch sein, nicht ${low}, ${likely}, ${high}.`,
  badMeasurement: ({ input, value }) =>
    `Die Streuung einer Messung der Unbekannten „${input}“ muss mindestens 0 sein, nicht ${value}.`,
  likelyImpossible: ({ why }) => `Mit allen Unbekannten beim üblichen Wert: ${why}.`,
  inputImpossible: ({ input, value, why }) => `Unbekannte „${input}“ bei ${value}: ${why}.`,
  noSuchInput: ({ input }) => `Es gibt keine Unbekannte „${input}“.`,
  comparedTwice: ({ list, id }) =>
    `Die Kennung „${id}“ steht zweimal unter den ${list === 'options' ? 'Spielweisen' : 'Unbekannten'}.`,
  sameAxes: ({ input }) => `Eine Karte braucht zwei verschiedene Unbekannte, nicht zweimal „${input}“.`,
  collectsNothing: ({ option, spot }) => `„${option}“ nimmt bei „${spot}“ nichts auf.`,
  pathStart: ({ pointer }) => `Der Pfad „${pointer}“ muss mit „/“ beginnen, wie „/options/0/robot/form/spread“.`,
  pathTilde: ({ pointer }) => `Im Pfad „${pointer}“ steht ein „~“, dem weder 0 noch 1 folgt.`,
  pathNowhere: ({ pointer, token }) => `Der Pfad „${pointer}“ führt nirgendwohin: „${token}“ gibt es nicht.`,
}
