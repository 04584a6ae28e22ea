/** Puts a popover under what opened it, or above where there is no room below, and within the window. */
export function place(popover: HTMLElement, opener: HTMLElement): void {
  const gap = 6
  const at = opener.getBoundingClientRect()
  const size = popover.getBoundingClientRect()
  const right = document.documentElement.clientWidth - size.width - gap
  const below = at.bottom + gap
  const fits = below + size.height <= window.innerHeight
  popover.style.left = `${Math.max(gap, Math.min(at.left, right))}px`
  popover.style.top = `${fits ? below : Math.max(gap, at.top - gap - size.height)}px`
}
