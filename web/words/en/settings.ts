/** What a device keeps about how it shows things. */
export const settings = {
  kept: 'Kept on this device only.',
  language: 'Language',
  asBrowser: (name: string) => `as the browser asks: ${name}`,
  followBrowser: 'as the browser asks',
  scheme: 'Light or dark',
  schemes: { system: 'as the system asks', light: 'light', dark: 'dark' },
  contrast: 'Contrast',
  contrasts: { system: 'as the system asks', usual: 'usual', more: 'high' },
  helpPage: 'How to start, and what the words mean',
  shortcuts: 'Keyboard shortcuts',
}
