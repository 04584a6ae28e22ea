import { Link, useLocation } from 'wouter'
import { useReachable } from '../data/connection.ts'
import { words } from '../words/catalogue.ts'
import { UnitSwitch } from './UnitSwitch.tsx'
import './masthead.css'

const places = [
  { href: '/', name: 'start' },
  { href: '/games', name: 'games' },
  { href: '/quick-sheet', name: 'quickSheet' },
  { href: '/designs', name: 'designs' },
  { href: '/trade-offs', name: 'tradeOffs' },
  { href: '/decisions', name: 'decisions' },
] as const

export function Masthead() {
  const [location] = useLocation()
  const reachable = useReachable()
  const texts = words().shell
  return (
    <header className="masthead">
      <a className="skip" href="#main">
        {texts.skip}
      </a>
      <div className="masthead-line">
        <Link href="/" className="masthead-name">
          <img src="/mark.svg" alt="" width="30" height="30" />
          Cyclewright
        </Link>
        <nav aria-label={texts.screens}>
          {places.map(({ href, name }) => {
            const here = href === '/' ? location === '/' : location.startsWith(href)
            return (
              <Link key={href} href={href} aria-current={here ? 'page' : undefined}>
                {texts.places[name]}
              </Link>
            )
          })}
        </nav>
        <UnitSwitch />
      </div>
      <div className="graticule" aria-hidden="true" />
      {!reachable && (
        <p className="silence" role="status">
          {texts.silence}
        </p>
      )}
    </header>
  )
}
