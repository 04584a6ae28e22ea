import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { SelectionLog } from '../../../data/selection.ts'
import { useTyped } from '../../../data/useTyped.ts'
import { words } from '../../../words/catalogue.ts'

/**
 * Whom we do not invite, and why. The screen is seen in a crowd: names and reasons are shown as long as the button is held,
 * by finger, mouse or key, and never printed.
 */
export function Aside(props: { event: string; log: SelectionLog; teams: readonly string[] }) {
  const { event, log, teams } = props
  const texts = words().picks
  const { aside } = log.protocol
  const [held, setHeld] = useState(false)
  const { typed, type, forget } = useTyped(`picks/${event}/aside`, { team: '', reason: '' })
  const [tried, setTried] = useState(false)
  const team = typed.team.trim()
  const known = teams.includes(team)
  const keep = (reason: string | null) => {
    setTried(true)
    if (!known || reason === '') return
    log.write({ kind: 'aside', team, reason })
    forget()
    setTried(false)
  }
  const presses = (event: { key: string }) => event.key === ' ' || event.key === 'Enter'
  return (
    <section className="sheet stack no-print" aria-labelledby="aside">
      <h2 id="aside">{texts.aside}</h2>
      <p>{texts.asideHow}</p>
      <div>
        <Button
          variant="default"
          className="picks-hold"
          onPointerDown={() => setHeld(true)}
          onPointerUp={() => setHeld(false)}
          onPointerLeave={() => setHeld(false)}
          onPointerCancel={() => setHeld(false)}
          onContextMenu={(event) => event.preventDefault()}
          onKeyDown={(event) => presses(event) && setHeld(true)}
          onKeyUp={(event) => presses(event) && setHeld(false)}
          onBlur={() => setHeld(false)}
        >
          {texts.hold}
        </Button>
      </div>
      <div className="picks-aside" aria-live="polite">
        {held &&
          (aside.size === 0 ? (
            <p>{texts.noneAside}</p>
          ) : (
            <ul>
              {[...aside].map(([each, reason]) => (
                <li key={each}>
                  {each}: {reason}
                </li>
              ))}
            </ul>
          ))}
      </div>
      <div className="row">
        <TextInput
          label={texts.asideTeam}
          inputMode="numeric"
          value={typed.team}
          error={tried && !known ? texts.unknownTeam(team) : null}
          onChange={(event) => type({ ...typed, team: event.currentTarget.value })}
        />
        <TextInput
          label={texts.asideReason}
          type="password"
          autoComplete="off"
          value={typed.reason}
          maxLength={500}
          error={tried && known && typed.reason.trim() === '' && !aside.has(team) ? texts.noReason : null}
          onChange={(event) => type({ ...typed, reason: event.currentTarget.value })}
        />
        <Button variant="default" onClick={() => keep(typed.reason.trim())}>
          {texts.setAside}
        </Button>
        <Button variant="default" onClick={() => keep(null)}>
          {texts.bringBack}
        </Button>
      </div>
    </section>
  )
}
