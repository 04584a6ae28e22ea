import { Button } from '@mantine/core'
import { useState } from 'react'
import { onTurn, type Selection, type SelectionStep } from '../../../../src/model/picks/selection/index.ts'
import type { SelectionLog } from '../../../data/selection.ts'
import { words } from '../../../words/catalogue.ts'
import { captainOnTurn } from './rules.ts'

type Kind = 'accepts' | 'declines' | 'withdraws'
const kinds: readonly Kind[] = ['accepts', 'declines', 'withdraws']

/** What is called out, a tap a name: whose turn it is, all teams that may be named by number, and the way back. */
export function Calling(props: { log: SelectionLog; selection: Selection; us: string; mayCall: boolean }) {
  const { log, selection, us, mayCall } = props
  const texts = words().picks
  const { state } = selection
  const [kind, setKind] = useState<Kind>('accepts')
  const named = state.free.toSorted((a, b) => a.localeCompare(b, 'en', { numeric: true }))
  const call = (team: string) => {
    const step: SelectionStep = { kind, team }
    log.write({ kind: 'called', step })
    // A decline is the exception: the next name is taken again.
    setKind('accepts')
  }
  const captain = captainOnTurn(selection)
  return (
    <section className="sheet stack" aria-labelledby="calling">
      <h2 id="calling">{texts.calling}</h2>
      <p className="answer" role="status">
        {state.turn
          ? onTurn(state, us)
            ? texts.ourTurn(state.turn.alliance, state.turn.round)
            : texts.turn(state.turn.alliance, captain ?? '', state.turn.round)
          : texts.over}
      </p>
      {mayCall && state.turn && (
        <>
          <fieldset className="picks-kinds">
            <legend>{texts.whatIsCalled}</legend>
            {kinds.map((each) => (
              <label key={each}>
                <input type="radio" name="called" checked={kind === each} onChange={() => setKind(each)} />
                {texts.kinds[each]}
              </label>
            ))}
          </fieldset>
          <div className="picks-names" role="group" aria-label={texts.names[kind]}>
            {named.map((team) => (
              <button key={team} type="button" onClick={() => call(team)}>
                {team}
              </button>
            ))}
          </div>
        </>
      )}
      {mayCall && <Undo log={log} />}
    </section>
  )
}

/** The last line that is in force, and the way back from it. */
export function Undo({ log }: { log: SelectionLog }) {
  const texts = words().picks
  const [sure, setSure] = useState(false)
  const last = log.protocol.inForce.at(-1)
  if (!last) return null
  const { line, id } = last
  const undo = () => {
    setSure(false)
    log.write({ kind: 'undoes', line: id })
  }
  if (line.kind === 'begins')
    return sure ? (
      <p role="alert">
        {texts.surelyUnbegin}{' '}
        <Button size="compact-sm" variant="default" onClick={undo}>
          {texts.unbegin}
        </Button>{' '}
        <Button size="compact-sm" variant="default" onClick={() => setSure(false)}>
          {texts.keep}
        </Button>
      </p>
    ) : (
      <div>
        <Button variant="default" onClick={() => setSure(true)}>
          {texts.unbegin}
        </Button>
      </div>
    )
  if (line.kind !== 'called') return null
  return (
    <p>
      {texts.said[line.step.kind](line.step.team)}{' '}
      <Button variant="default" onClick={undo}>
        {texts.undo}
      </Button>
    </p>
  )
}
