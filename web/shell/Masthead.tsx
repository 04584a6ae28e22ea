import { lazy, Suspense, useState } from 'react'
import { Link, useLocation } from 'wouter'
import { useReachable } from '../data/connection.ts'
import { words } from '../words/catalogue.ts'
import { holds, isAt, places } from './places.ts'
import { screen } from './screen.ts'
import './masthead.css'

const SettingsPanel = screen(() => import('./SettingsPanel.tsx'))

// Without waiting for the texts of all screens: a nickname needs none.
const WhoIsIn = lazy(() => import('./WhoIsIn.tsx'))

/** Where one is and can go. On a phone the mark stands for the name and for the start page, so that two lines are enough. */
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
          <span>Cyclewright</span>
        </Link>
        <nav aria-label={texts.screens}>
          {places.map(({ href, name }) => (
            <Link
              key={href}
              href={href}
              className={`to-${name}`}
              aria-current={isAt(location, href) ? 'page' : holds(location, href) ? 'true' : undefined}
            >
              {texts.places[name]}
            </Link>
          ))}
        </nav>
        <Suspense>
          <WhoIsIn />
        </Suspense>
        <SettingsButton />
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

function SettingsButton() {
  const [open, setOpen] = useState(false)
  return (
    <>
      <button type="button" className="settings-button" aria-haspopup="dialog" onClick={() => setOpen(true)}>
        <svg width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
          <path d="M2 5h18M2 11h18M2 17h18" stroke="currentColor" strokeWidth="1.6" />
          {[14, 6, 12].map((x, row) => (
            <circle
              key={x}
              cx={x}
              cy={5 + 6 * row}
              r="2.6"
              fill="var(--sheet)"
              stroke="currentColor"
              strokeWidth="1.6"
            />
          ))}
        </svg>
        <span>{words().shell.settings}</span>
      </button>
      {open && (
        <Suspense>
          <SettingsPanel onClose={() => setOpen(false)} />
        </Suspense>
      )}
    </>
  )
}
