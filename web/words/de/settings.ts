import type { Words } from '../catalogue.ts'

export const settings: Words['settings'] = {
  kept: 'Nur auf diesem Gerät gemerkt.',
  language: 'Sprache',
  asBrowser: (name) => `wie der Browser es will: ${name}`,
  followBrowser: 'wie der Browser es will',
  scheme: 'Hell oder dunkel',
  schemes: { system: 'wie das System es will', light: 'hell', dark: 'dunkel' },
  contrast: 'Kontrast',
  contrasts: { system: 'wie das System es will', usual: 'üblich', more: 'hoch' },
  helpPage: 'Wie du anfängst und was die Wörter heißen',
  shortcuts: 'Tastenkürzel',
}
