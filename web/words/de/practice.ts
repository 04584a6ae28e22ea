import type { Words } from '../catalogue.ts'

export const practice: Words['practice'] = {
  title: 'Tage weniger Übung',
  how: 'Was gebaut wird, nimmt den Fahrern Tage. Sag, was ein Tag Übung wert ist und wie viele Tage weniger dieser Roboter bekommen könnte; die Abwägung sagt dann, wie viele er hergeben kann, bevor die Antwort sich wendet.',
  means:
    'Jeder Tag weniger macht die Zeiten um diesen Anteil dessen länger, was jetzt in den Unterlagen steht, oder den Erfolg um ihn kleiner; die Tage zählen geradlinig zusammen. Wirklich lehren die ersten Tage am meisten, also bleib bei so vielen Tagen, wie du den Unterschied gesehen hast. Dieselben Tage lassen sich hier nicht zugleich auf Zeiten und Erfolg legen: Nimm, was am meisten leidet.',
  option: 'Wer weniger übt',
  what: 'Was darunter leidet',
  pace: 'Fahrtempo',
  times: 'Fahrtempo und alle Schritte aller Fahrten',
  success: (place) => `Erfolg bei ${place}`,
  collecting: (place) => `Erfolg beim Holen bei ${place}`,
  share: 'Ein Tag ist wert',
  low: 'Tage weniger, niedrig',
  likely: 'Wahrscheinlich',
  high: 'Hoch',
  add: 'Hinzufügen',
  name: (robot, what) => `${robot}: Tage weniger Übung (${what})`,
  short: { pace: 'Tempo', times: 'alle Zeiten' },
  about: (what, share) => `${what}; ein Tag ist ${share}\u00a0% wert`,
  days: (days) => `${days}\u00a0${days === '1' ? 'Tag' : 'Tage'} weniger`,
  unit: 'Tage',
  order: 'Schreib niedrig, wahrscheinlich und hoch in dieser Reihenfolge.',
  tooMany: (days) => `So viele Tage ließen keinen Erfolg übrig: höchstens ${days}.`,
}
