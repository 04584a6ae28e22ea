import type { Words } from '../catalogue.ts'

export const cautions: Words['cautions'] = {
  label: 'Warnungen',
  whoDecides:
    'Die Regeln der Veranstaltung, örtliche Vorschriften und die Menschen, die für die Sicherheit verantwortlich sind, entscheiden, nicht diese Seite.',
  lifted: {
    title: 'Angehobene Roboter',
    text: 'Ein Roboter, der hängt, kann fallen, wenn ein Riegel, ein Seil oder der Strom nachlässt, und Hände oder Füße darunter zerquetschen. Üblich ist: Zwei Menschen lassen ihn herab, eine Stütze steht darunter, bevor jemand hineingreift, und niemand steht darunter.',
  },
  spinning: {
    title: 'Drehende Räder',
    text: 'Ein schnell drehendes Rad schleudert Stücke und Splitter, zieht Finger, Haare und Ärmel ein und läuft nach, wenn der Strom aus ist. Üblich ist: Es hat eine Abdeckung, die Augen sind geschützt, und Hände bleiben weg, bis es stillsteht.',
  },
  air: {
    title: 'Druckluft',
    text: 'Zylinder bewegen sich mit voller Kraft, sobald Luft einströmt oder jemand an ein Ventil stößt, auch bei ausgeschaltetem Strom, und ein beschädigter Behälter kann platzen. Üblich ist: Die Luft ist abgelassen und gegen Wiedereinschalten gesichert, bevor jemand am Roboter arbeitet, und die Augen sind geschützt.',
  },
  energy: {
    title: 'Federn und Batterien',
    text: 'Eine gespannte Feder oder ein gehobener Arm schlägt, wenn er freikommt, und eine kurzgeschlossene oder beschädigte Batterie brennt. Üblich ist: Federn sind entspannt und die Batterie abgesteckt, bevor gearbeitet wird, und eine beschädigte Batterie steht abseits.',
  },
}
