import { keptChoice } from '../../data/kept.ts'

/** What this phone's owner chose. */
export const hand = keptChoice<'right' | 'left'>('cyclewright/stands/hand', ['right', 'left'])
export const redWall = keptChoice<'left' | 'right'>('cyclewright/stands/red-wall', ['left', 'right'])
export const buzz = keptChoice<'on' | 'off'>('cyclewright/stands/buzz', ['on', 'off'])
/** Dark on light whatever the system says: in the stands it is bright. */
export const look = keptChoice<'light' | 'bright' | 'dark'>('cyclewright/stands/look', ['light', 'bright', 'dark'])

/** Marks the page for its colours, now and after every choice. */
export function followLook(): void {
  const mark = () => {
    const chosen = look.now()
    document.documentElement.dataset['scheme'] = chosen === 'dark' ? 'dark' : 'light'
    const more = chosen === 'bright' || matchMedia('(prefers-contrast: more)').matches
    document.documentElement.dataset['contrast'] = more ? 'more' : 'usual'
  }
  mark()
  look.subscribe(mark)
}

/** A short buzz that says that a tap was taken; a longer one that something was taken back. */
export function feel(what: 'tap' | 'undo' | 'end'): void {
  if (buzz.now() === 'off') return
  try {
    navigator.vibrate?.({ tap: 15, undo: [30, 40, 30], end: [200, 100, 200] }[what])
  } catch {
    // A browser that refuses to buzz takes nothing from the tap.
  }
}
