import type { Words } from '../catalogue.ts'

export const format: Words['format'] = {
  under: (share) => `unter ${share}`,
  over: (share) => `über ${share}`,
  whole: 'das ganze Dokument',
  member: (number) => `Nr. ${number}`,
  none: 'keins',
  yes: 'ja',
  no: 'nein',
}
