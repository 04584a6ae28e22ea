import { useEffect } from 'react'
import { words } from '../words/catalogue.ts'

/** The screens that the masthead leads to. */
export const places = [
  { href: '/', name: 'start' },
  { href: '/games', name: 'games' },
  { href: '/quick-sheet', name: 'quickSheet' },
  { href: '/designs', name: 'designs' },
  { href: '/trade-offs', name: 'tradeOffs' },
  { href: '/decisions', name: 'decisions' },
  { href: '/match', name: 'match' },
  { href: '/event', name: 'event' },
] as const

export const isAt = (location: string, href: string): boolean =>
  href === '/' ? location === '/' : location === href || location.startsWith(`${href}/`)

/** Whether a place of the masthead holds this screen: the parts shelf stands among the designs. */
export const holds = (location: string, href: string): boolean =>
  isAt(location, href) || (href === '/designs' && isAt(location, '/parts'))

/** The window is called after the screen, so that tabs and the browser's history tell them apart. */
export function useTitle(location: string): void {
  const { places: names, help, parts } = words().shell
  const here = places.find(({ href }) => isAt(location, href))
  const name = here ? names[here.name] : isAt(location, '/help') ? help : isAt(location, '/parts') ? parts : null
  useEffect(() => {
    document.title = name === null || location === '/' ? 'Cyclewright' : `${name} · Cyclewright`
  }, [name, location])
}
