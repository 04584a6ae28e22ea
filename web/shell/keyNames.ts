import { words } from '../words/catalogue.ts'
import { type ShortcutId, shortcuts } from './shortcuts.ts'

const signs: { readonly [key: string]: string } = { ArrowUp: '↑', ArrowDown: '↓', ArrowLeft: '←', ArrowRight: '→' }

const isMac = (): boolean => /Mac|iPhone|iPad/.test(navigator.platform)

/** A key as it is written on the reader's keyboard. */
export function keyName(key: string): string {
  const { names } = words().shortcuts
  if (key === 'Control' && isMac()) return '⌘'
  return signs[key] ?? (Object.hasOwn(names, key) ? names[key as keyof typeof names] : key)
}

/** The first combination of a shortcut: 'Ctrl+Shift+Z'. */
export const keysOf = (id: ShortcutId): string => shortcuts[id].keys[0].split('+').map(keyName).join('+')
