import type { Thing } from '../../../src/model/documents/sentences.ts'
import type { Words } from '../catalogue.ts'
import { compare, field, plan } from './computing.ts'
import { ofEvents } from './eventSentences.ts'
import { ofExchange } from './exchangeSentences.ts'
import { ofPeople } from './peopleRefusals.ts'
import { shapes, stored } from './shapes.ts'

type Named = Extract<Thing, string>

/** With its article: as the subject, and as what is missing. */
const things: Record<Named, [the: string, no: string]> = {
  piece: ['Das Spielstück', 'kein Spielstück'],
  source: ['Die Quelle', 'keine Quelle'],
  goal: ['Das Ziel', 'kein Ziel'],
  finish: ['Der Abschluss', 'keinen Abschluss'],
  place: ['Der Ort', 'keinen Ort'],
  start: ['Der Startplatz', 'keinen Startplatz'],
  'start or spot': ['Der Startplatz oder Standpunkt', 'keinen Startplatz oder Standpunkt'],
  'routine of the robot': ['Die Routine des Roboters', 'keine Routine des Roboters'],
  'mechanism of the robot': ['Der Mechanismus des Roboters', 'keinen Mechanismus des Roboters'],
  'mechanism of the robot that air moves': [
    'Der Mechanismus des Roboters, den Luft bewegt,',
    'keinen Mechanismus des Roboters, den Luft bewegt,',
  ],
  'drive among the robot’s mechanisms': [
    'Der Antrieb unter den Mechanismen des Roboters',
    'keinen Antrieb unter den Mechanismen des Roboters',
  ],
  'goal that pays for holding': ['Das Ziel, das fürs Halten zahlt,', 'kein Ziel, das fürs Halten zahlt,'],
}

const placeOf = (thing: Exclude<Thing, string>) => ('spotOf' in thing ? thing.spotOf : thing.spotOfGoal)

const the = (thing: Thing): string =>
  typeof thing === 'string' ? things[thing][0] : `Der Standpunkt von „${placeOf(thing)}“`
const no = (thing: Thing): string =>
  typeof thing === 'string' ? things[thing][1] : `keinen Standpunkt von „${placeOf(thing)}“`

const lists = {
  pieces: 'Spielstücke',
  sources: 'Quellen',
  goals: 'Ziele',
  finishes: 'Abschlüsse',
  sets: 'Sätze',
  bonuses: 'Boni',
  obstacles: 'Hindernisse',
  'starts or spots': 'Startplätze oder Standpunkte',
  routines: 'Routinen',
  mechanisms: 'Mechanismen',
  ways: 'Spielweisen',
  'measured times': 'gemessene Zeiten',
}

const loads = { preload: 'Die Ladung zu Beginn', holding: 'Was die Routine am Ende hält,', load: 'Die Ladung' }

export const problems: Words['problems'] = {
  ...field,
  ...plan,
  ...compare,
  ...shapes,
  ...stored,
  ...ofEvents,
  ...ofExchange,
  ...ofPeople,

  idTwice: ({ list, id }) => `Es gibt zwei ${lists[list]} mit der Kennung „${id}“`,
  unknown: ({ thing, id }) => `Es gibt ${no(thing)} mit der Kennung „${id}“`,
  namedTwice: ({ thing, id }) => `${the(thing)} „${id}“ ist doppelt genannt`,

  noTeleop: ({ teleop }) => `Die gefahrene Zeit muss länger als 0 s sein, nicht ${teleop}`,
  longEndgame: ({ teleop, endgame }) =>
    `Die Endphase ist der letzte Teil der gefahrenen Zeit (${teleop} s), sie kann also nicht länger sein, nicht ${endgame}`,
  noLevel: ({ bonus }) => `Der Bonus „${bonus}“ hat keine Ebene mit einer Zahl, die zu erreichen ist`,
  otherLevel: ({ bonus, level, known }) =>
    `Der Bonus „${bonus}“ verlangt je nach Ebene der Veranstaltung anderes und sagt nichts über „${level}“: Seine Ebenen sind ${known.join(', ')}`,
  notHeld: ({ goal }) => `Das Ziel „${goal}“ zahlt für jedes Stück; gehaltene Sekunden zählen nur, wo das Halten zahlt`,
  badOutline: ({ obstacle, fault }) => `Der Umriss des Hindernisses „${obstacle}“ ist kein einfacher. ${fault}`,
  noPartner: ({ obstacle, symmetry }) =>
    `Das Hindernis „${obstacle}“ liegt auf keinem Hindernis, wenn das Feld ${symmetry === 'mirror' ? 'gespiegelt' : 'um eine halbe Drehung gedreht'} wird: Die Allianzen sähen verschiedene Felder`,
  outside: ({ what, at, length, width }) =>
    `${'start' in what ? `Der Startplatz „${what.start}“` : `Der Standpunkt „${what.spot}“ von „${what.of}“`} liegt außerhalb des Feldes von ${length} × ${width}, bei ${at.join(' längs und ')} quer`,

  tooMany: ({ what, piece, most, count }) =>
    `${loads[what]} kann höchstens so viel sein, wie der Roboter von „${piece}“ trägt (${most}), nicht ${count}`,
  stepTooLate: ({ auto, at }) => `Der Zeitpunkt muss in der autonomen Zeit von ${auto} s liegen, nicht bei ${at}`,
  notAccepted: ({ goal, piece }) => `Das Ziel „${goal}“ nimmt „${piece}“ nicht`,
  noRetry: ({ success }) =>
    `Bei einem Erfolg von ${success} misslingen manche Versuche; gib also an, wie lange ein neuer dauert`,
  notCarried: ({ piece, source }) => `Der Roboter holt „${piece}“ bei „${source}“; gib also an, wie viele er trägt`,
  otherwiseItself: ({ finish }) => `Ein Misslingen bei „${finish}“ kann nicht „${finish}“ selbst einbringen`,
  driveNowhere: () => 'Eine Fahrt endet anderswo, als sie beginnt: Wähle einen anderen Standpunkt',
  driveTwice: () =>
    'Diese Fahrt hat schon eine eigene Zeit, in beiden Richtungen dieselbe: Wähle andere Standpunkte, oder entferne eine von beiden',
  lateHabit: ({ teleop, departs }) =>
    `Der Aufbruch ist verbleibende Zeit, also höchstens ${teleop} s, nicht ${departs}`,
  longTrip: ({ most, count }) =>
    `Eine Fahrt gilt höchstens so vielen Stücken, wie der Roboter trägt (${most}), nicht ${count}`,
  noShares: () => 'Mindestens eine Zahl von Stücken je Fahrt braucht einen Anteil über 0',
  slowPace: ({ value }) => `Das Tempo dehnt die Zeit einer Fahrt, ist also mindestens 1, nicht ${value}`,
  openPace: () =>
    'Das Tempo darf nie unter 1 liegen; eines mit Median und einer Streuung über 1 kann es: Nimm niedrig, üblich, hoch oder gemessene Zeiten',

  builtInStage: ({ stage }) => `Ein Schritt kann nicht „${stage}“ heißen: Den hat jeder Weg schon`,
  stageTwice: ({ stage }) => `Es gibt zwei Schritte mit der Kennung „${stage}“`,
  waitsForItself: ({ stage }) => `Der Schritt „${stage}“ wartet auf sich selbst`,
  waitsForUnknown: ({ stage, before }) => `Der Schritt „${stage}“ wartet auf „${before}“, den es hier nicht gibt`,
  waitsTwice: ({ stage, before }) => `Der Schritt „${stage}“ nennt „${before}“ doppelt`,
  circle: ({ stages }) => `Der Schritt „${stages[0] ?? ''}“ wartet auf sich selbst: ${stages.join(' nach ')}`,

  routineElsewhere: ({ routine, start }) => `Die Routine „${routine}“ beginnt nicht am Startplatz „${start}“`,
  noHoldSeconds: ({ goal }) =>
    `Das Ziel „${goal}“ zahlt fürs Halten: Gib an, wie viele Sekunden ein Stück dort weiterzahlt`,
  lateCall: ({ teleop, at }) => `Der Ruf ist verbleibende Zeit, also höchstens ${teleop} s, nicht ${at}`,
  earlyDefence: ({ teleop, from }) =>
    `Der Beginn des Verteidigens ist verbleibende Zeit, also höchstens ${teleop} s, nicht ${from}`,
  emptyDefence: ({ from, until }) =>
    `Beginn und Ende des Verteidigens sind verbleibende Zeiten, das Ende also weniger als der Beginn (${from}), nicht ${until}`,
  nothingAccepted: ({ goal }) => `Das Ziel „${goal}“ nimmt nichts, was diese Spielweise holt`,

  noEntry: ({ thing, id }) => `Der Roboter hat nichts eingetragen: ${the(thing)} „${id}“`,
  noSuchEntry: ({ goal, count, entry }) =>
    `Die Nummer muss kleiner als ${count} sein, die Zahl der Arten, bei „${goal}“ zu punkten, nicht ${entry}`,
}
