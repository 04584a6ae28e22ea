/** A combination as aria-keyshortcuts writes it: 'Control+Shift+Z'. Control is Command on a Mac. */
type Keys = string

interface Shortcut {
  where: 'anywhere' | 'editors' | 'numbers' | 'strip' | 'field'
  keys: readonly Keys[]
}

/** Every keyboard shortcut there is: what handles keys asks `pressed`, and the list that is shown is made of this. */
export const shortcuts = {
  shortcuts: { where: 'anywhere', keys: ['?'] },
  close: { where: 'anywhere', keys: ['Escape'] },
  save: { where: 'editors', keys: ['Control+S'] },
  undo: { where: 'editors', keys: ['Control+Z'] },
  redo: { where: 'editors', keys: ['Control+Shift+Z', 'Control+Y'] },
  numberUp: { where: 'numbers', keys: ['ArrowUp'] },
  numberDown: { where: 'numbers', keys: ['ArrowDown'] },
  numberFarUp: { where: 'numbers', keys: ['Shift+ArrowUp'] },
  numberFarDown: { where: 'numbers', keys: ['Shift+ArrowDown'] },
  barLonger: { where: 'strip', keys: ['ArrowRight', 'ArrowUp'] },
  barShorter: { where: 'strip', keys: ['ArrowLeft', 'ArrowDown'] },
  barMuchLonger: { where: 'strip', keys: ['PageUp', 'Shift+ArrowRight', 'Shift+ArrowUp'] },
  barMuchShorter: { where: 'strip', keys: ['PageDown', 'Shift+ArrowLeft', 'Shift+ArrowDown'] },
  barEarlier: { where: 'strip', keys: ['Control+ArrowLeft'] },
  barLater: { where: 'strip', keys: ['Control+ArrowRight'] },
  barRemove: { where: 'strip', keys: ['Delete'] },
  barCancel: { where: 'strip', keys: ['Escape'] },
  move: { where: 'field', keys: ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'] },
  moveFar: { where: 'field', keys: ['Shift+ArrowLeft', 'Shift+ArrowRight', 'Shift+ArrowUp', 'Shift+ArrowDown'] },
  remove: { where: 'field', keys: ['Delete', 'Backspace'] },
  cancelDrag: { where: 'field', keys: ['Escape'] },
} as const satisfies { [id: string]: Shortcut }

export type ShortcutId = keyof typeof shortcuts

export const shortcutIds = Object.keys(shortcuts) as ShortcutId[]

interface Pressed {
  key: string
  ctrlKey: boolean
  metaKey: boolean
  shiftKey: boolean
  altKey: boolean
}

function isPressed(event: Pressed, keys: Keys): boolean {
  const parts = keys.split('+')
  const key = parts.at(-1)!
  // What Shift makes of a key is another sign in each layout: '?' is asked for as the sign that it is.
  const sign = key.length === 1 && !/[a-z]/i.test(key)
  return (
    event.key.toLowerCase() === key.toLowerCase() &&
    (event.ctrlKey || event.metaKey) === parts.includes('Control') &&
    (sign || event.shiftKey === parts.includes('Shift')) &&
    !event.altKey
  )
}

/** Whether these are the keys of one of the shortcuts; which one, or null. */
export const pressed = <Id extends ShortcutId>(event: Pressed, ...ids: readonly Id[]): Id | null =>
  ids.find((id) => shortcuts[id].keys.some((keys) => isPressed(event, keys))) ?? null
