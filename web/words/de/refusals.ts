import type { Words } from '../catalogue.ts'

/** What was said in English stands behind where it names something. */
const more = (sentence: string): string => `Auf Englisch: „${sentence}“`

export const refusals: Words['refusals'] = {
  malformed: (sentence) => `Das ist nicht so, wie es hier gebraucht wird. ${more(sentence)}`,
  unauthenticated: () => 'Dafür musst du angemeldet sein.',
  forbidden: () => 'Das ist von hier aus nicht erlaubt.',
  notFound: () => 'Das gibt es nicht, oder nicht mehr.',
  conflict: () => 'Inzwischen hat jemand anderes gesichert.',
  tooLarge: () => 'Das ist größer als die 2 MB, die der Server liest.',
  notJson: () => 'Der Server konnte das nicht lesen.',
  unreachable: (sentence) => `Das ist zu verstehen, aber es geht kein Weg. ${more(sentence)}`,
  overBudget: (sentence) => `Das wäre zu viel zu rechnen. ${more(sentence)}`,
  notOffered: (sentence) => `Das kann diese Version nicht rechnen. ${more(sentence)}`,
  tooMany: () => 'Das waren zu viele Anfragen auf einmal. Warte einen Augenblick und versuch es noch einmal.',
  internal: () => 'Im Server ging etwas schief. Gesichert wurde nichts; mehr steht in seinem Protokoll.',
  busy: () => 'Der Server rechnet schon an allem, was er kann. Versuch es gleich noch einmal.',
  storageFull: () => 'Die Platte des Servers ist voll. Gesichert wurde nichts; sag es der Leitung.',
  noDatabase: () =>
    'Der Server erreicht gerade seine Datenbank nicht; ob das gesichert wurde, ist nicht bekannt. Versuch es gleich noch einmal.',
  invalid: (sentence) => `Das kann so nicht sein. ${more(sentence)}`,
  outOfMemory: (sentence) => `Dafür reicht der Speicher nicht. ${more(sentence)}`,
  unexpected: (sentence) => `Dabei ging etwas schief. ${more(sentence)}`,
}
