import type { Words } from '../catalogue.ts'

export const stopwatch: Words['stopwatch'] = {
  title: 'Stoppuhr',
  label: (design) => `Stoppuhr · ${design}`,
  back: 'Zum Entwurf',
  what: 'Was gemessen wird',
  parts: { whole: 'Ganzer Weg, die Fahrt eingeschlossen', retry: 'Ein wiederholter Versuch', drive: 'Nur die Fahrt' },
  none: 'Dieser Entwurf hat noch keinen Weg. Sag im Entwurf, was der Roboter kann.',
  lost: 'Was die Adresse verlangt, gibt es im Entwurf nicht mehr; wähle, was gemessen wird.',
  help: 'Drück, wenn es beginnt und wenn es endet. „Nächste“ beendet eine Zeit und beginnt sofort die nächste, für Wege, die sich wiederholen. Es zählt der Augenblick, in dem der Finger aufsetzt.',
  start: 'Start',
  stop: 'Stopp',
  next: 'Nächste',
  undo: { start: 'Start zurücknehmen', stop: 'Stopp zurücknehmen', next: '„Nächste“ zurücknehmen' },
  running: 'Läuft',
  stopped: 'Steht',
  time: (value) => `${value} s`,
  ended: (number, time) => `Zeit ${number}: ${time}`,
  hand: {
    title: 'Eine Zeit von anderswo',
    label: 'Zeit',
    help: 'Aus einem Video oder von einer anderen Uhr',
    add: 'Hinzufügen',
  },
  list: {
    title: 'Gemessene Zeiten',
    none: 'Noch ist keine Zeit gemessen.',
    head: ['Nr.', 'Zeit', 'Gemessen', 'Zählt'],
    strike: 'Streichen',
    strikeOne: (number, time) => `Zeit ${number}, ${time}, streichen`,
    back: 'Wieder zählen',
    backOne: (number, time) => `Zeit ${number}, ${time}, wieder zählen`,
    reason: 'Warum sie nicht zählt',
    reasons: ['Zu spät gedrückt', 'Der Roboter wurde behindert', 'Etwas ging kaputt', 'Es war eine andere Art von Weg'],
    other: 'ein anderer Grund',
    own: 'Der Grund',
    noReason: 'Bitte sag, warum, damit andere zustimmen können.',
    confirm: 'Streichen',
    leave: 'Stehen lassen',
    struck: (reason) => `Gestrichen: ${reason}`,
    far: (of) =>
      `${of.time} liegt weit ab: Üblich sind hier ${of.from} bis ${of.to}. War etwas anders? Sie zählt, bis du sie streichst.`,
    rule: 'Weit ab liegt, was vom Median weiter entfernt ist als dreimal 1,4826 × der mittlere Abstand (Median) davon, mindestens aber 0,1 s für die Hand, die drückt.',
  },
  sum: {
    few: (count) =>
      count === 1
        ? 'Eine Zeit zählt; mindestens 3 werden gebraucht.'
        : `${count} Zeiten zählen; mindestens 3 werden gebraucht.`,
    said: (of) =>
      `${of.count} Zeiten zählen: im Mittel ${of.mean}, ${of.low} bis ${of.high}.${of.struck > 0 ? ` ${of.struck} gestrichen.` : ''}`,
  },
  kept: {
    all: 'Alle Zeiten sind auf dem Server.',
    some: (count) =>
      count === 1 ? 'Eine Änderung ist nur auf diesem Telefon.' : `${count} Änderungen sind nur auf diesem Telefon.`,
    sending: 'Sie werden gesendet …',
    silent:
      'Der Server antwortet nicht. Sie bleiben auf diesem Telefon, auch wenn du die Seite schließt, und werden gesendet, sobald er wieder da ist.',
    refused: (why) => `Der Server nimmt sie nicht an: ${why} Sie bleiben auf diesem Telefon.`,
    notKept:
      'Dieses Telefon lässt die Seite nichts behalten: Die Zeiten stehen nur auf diesem Bildschirm. Schließ ihn nicht, bevor sie gesendet sind.',
    try: 'Jetzt senden',
    nothing: 'Zeiten werden sofort auf diesem Telefon behalten und von selbst an den Server gesendet.',
  },
  drive: {
    title: 'Gemessen und berechnet',
    from: 'Die Fahrt beginnt bei',
    to: 'und endet bei',
    computed: ({ length, ideal, expected }) =>
      `Berechnet: ${length}, ${ideal} von Stillstand zu Stillstand auf der idealen Linie; mit dem Tempo des Entwurfs im Mittel ${expected}.`,
    measured: ({ count, mean, low, high, difference, longer, factor }) =>
      `${count} Fahrten gemessen: im Mittel ${mean}, ${low} bis ${high}. Das ist ${difference} ${longer ? 'länger' : 'kürzer'} als berechnet und das ${factor}-Fache der idealen Linie.`,
    onePace:
      'Diese Zeiten ändern von selbst nichts. Zeigen mehrere Fahrten denselben Faktor, dann trage ihn als Tempo des Entwurfs ein. Weicht nur diese ab, dann trage ihr Mittel, geteilt durch das Tempo, im Entwurf unter „Eigene Zeiten zwischen zwei Standpunkten“ ein.',
  },
  offline: {
    preparing: 'Diese Seite wird in diesem Browser aufgehoben, damit sie sich ohne Verbindung öffnet …',
    ready: 'Diese Seite öffnet sich auch ohne Verbindung: Zeiten bleiben hier und werden später gesendet.',
    onlyHttps:
      'Unter dieser Adresse braucht die Seite zum Öffnen den Server, denn Browser heben nur Seiten von https-Adressen auf. Ist sie offen, werden Zeiten auch ohne Verbindung genommen.',
    never:
      'Dieser Browser hebt die Seite nicht auf: Zum Öffnen braucht sie den Server. Ist sie offen, werden Zeiten auch ohne Verbindung genommen.',
    asOf: (when) =>
      `Der Server antwortet nicht. Der Entwurf ist so gezeigt, wie ihn dieser Browser zuletzt hatte: ${when}.`,
  },
  use: {
    button: (count) => `Diese ${count} Zeiten im Entwurf verwenden`,
    before: (time) => `Der Entwurf sagt jetzt im Mittel ${time}.`,
    same: 'Der Entwurf verwendet diese Zeiten.',
    done: (revision) => `Im Entwurf als Fassung ${revision} gesichert.`,
    note: (what, count, struck) =>
      `Auf dem Übungsfeld gemessen: ${what}, ${count} Zeiten${struck > 0 ? `, ${struck} gestrichen` : ''}`,
    gone: 'Diesen Teil gibt es im neuesten Entwurf nicht mehr, also wird nichts geändert.',
    busy: 'Jemand sichert den Entwurf immer wieder; bitte versuch es noch einmal.',
    draft:
      'In diesem Browser gibt es ungesicherte Änderungen dieses Entwurfs. Übernimm die Zeiten im Entwurf, wo sie offen sind, oder sichere sie zuerst.',
    answer: (of) =>
      `Mit diesen Zeiten: ${of.before} → ${of.after} erwartete Punkte je Match (${of.change}), gespielt als „${of.way}“.`,
  },
  fromDesign: {
    link: 'Mit der Stoppuhr messen',
    have: (of) =>
      `${of.count} Zeiten sind gemessen, im Mittel ${of.mean}${of.struck > 0 ? `; ${of.struck} gestrichen` : ''}.`,
    use: 'Verwenden',
    used: 'Sie sind in Gebrauch.',
    few: (count) =>
      count === 1
        ? 'Eine Zeit ist gemessen; 3 werden gebraucht.'
        : `${count} Zeiten sind gemessen; 3 werden gebraucht.`,
  },
  caution: {
    title: 'Ein fahrender Roboter',
    text: 'Ein schneller Roboter sieht dich nicht: Er fährt über Füße, wirft Menschen um und drückt sie gegen Wände. Üblich ist: Wer misst, steht außerhalb der Feldbegrenzung, niemand ist auf dem Feld, solange der Roboter freigegeben ist, eine Person hält den Stopp und achtet auf nichts anderes, und Hände gehen erst hinein, wenn er gesperrt ist.',
  },
}
