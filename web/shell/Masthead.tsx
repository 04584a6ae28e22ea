import { Link, useLocation } from 'wouter'
import { useReachable } from '../data/connection.ts'
import './masthead.css'

const places = [
  { href: '/', name: 'Start' },
  { href: '/games', name: 'Games' },
  { href: '/designs', name: 'Designs' },
  { href: '/trade-offs', name: 'Trade-offs' },
  { href: '/decisions', name: 'Decisions' },
]

export function Masthead() {
  const [location] = useLocation()
  const reachable = useReachable()
  return (
    <header className="masthead">
      <a className="skip" href="#main">
        Skip to the content
      </a>
      <div className="masthead-line">
        <Link href="/" className="masthead-name">
          <img src="/mark.svg" alt="" width="30" height="30" />
          Cyclewright
        </Link>
        <nav aria-label="Screens">
          {places.map(({ href, name }) => {
            const here = href === '/' ? location === '/' : location.startsWith(href)
            return (
              <Link key={href} href={href} aria-current={here ? 'page' : undefined}>
                {name}
              </Link>
            )
          })}
        </nav>
      </div>
      <div className="graticule" aria-hidden="true" />
      {!reachable && (
        <p className="silence" role="status">
          The server does not answer. What you type stays in this browser and can be saved when it is back.
        </p>
      )}
    </header>
  )
}
