import { useEffect } from 'react'
import { pressed, shortcuts } from './shortcuts.ts'

const saving = `[aria-keyshortcuts="${shortcuts.save.keys[0]}"]`

/** The save button of what is being edited: of several on the screen the one nearest around an element, or the focus. */
export function saveButton(from: Element | null = document.activeElement): HTMLButtonElement | null {
  for (let around = from; around; around = around.parentElement) {
    const found = around.querySelector<HTMLButtonElement>(saving)
    if (found) return found
  }
  return null
}

const typing = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.matches('input, textarea, select, [contenteditable]')

/** The shortcuts that work on every screen. */
export function useShortcuts(of: { onList(): void }): void {
  const { onList } = of
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (pressed(event, 'shortcuts') && !typing(event.target)) {
        event.preventDefault()
        onList()
      }
      const button = pressed(event, 'save') ? saveButton() : null
      // Also where there is nothing to save: the browser would offer to save the page's file.
      if (button) {
        event.preventDefault()
        if (!button.disabled) button.click()
      }
    }
    addEventListener('keydown', press)
    return () => removeEventListener('keydown', press)
  }, [onList])
}
