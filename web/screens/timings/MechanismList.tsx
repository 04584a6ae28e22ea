import { Button } from '@mantine/core'
import { useState } from 'react'
import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import { mechanismAnswer } from '../../../src/model/timing/index.ts'
import { forgetTexts, useEdit } from '../../shell/fields/EditContext.tsx'
import { words } from '../../words/catalogue.ts'
import { listed } from '../../words/format.ts'
import { usersOf, withoutMechanism } from './edits.ts'
import { hundredths } from './hundredths.ts'
import { kindOf } from './inputs.ts'
import { useTimings } from './TimingContext.ts'
import { userWords } from './userWords.ts'
import './timings.css'

/** The robot's mechanisms: what each gives, who follows it, and removing it. */
export default function MechanismList() {
  const { robot } = useTimings()
  const texts = words().timings.list
  const mechanisms = robot.mechanisms ?? []
  return (
    <section className="sheet stack" aria-labelledby="mechanisms">
      <h2 id="mechanisms">{texts.title}</h2>
      {mechanisms.length === 0 ? (
        <p className="soft">{texts.none}</p>
      ) : (
        <ul className="mechanisms">
          {mechanisms.map((mechanism) => (
            <Line key={mechanism.id} mechanism={mechanism} />
          ))}
        </ul>
      )}
    </section>
  )
}

function Line({ mechanism }: { mechanism: Mechanism }) {
  const { game, robot, open, onOpen } = useTimings()
  const edit = useEdit()
  const texts = words().timings.list
  const [asking, setAsking] = useState(false)
  const answer = mechanismAnswer(mechanism)
  const users = usersOf(robot, mechanism.id)
  const used = listed(users.map((user) => userWords(user, game)))
  const remove = () => {
    if (open === mechanism.id) onOpen(null)
    forgetTexts(edit, ['robot', 'mechanisms'])
    edit.set(['robot'], withoutMechanism(robot, mechanism.id))
  }
  return (
    <li className="stack">
      <div className="row spread">
        <div>
          <strong>{mechanism.name}</strong>{' '}
          <span className="soft small">{words().timings.kinds[kindOf(mechanism)]}</span>
          <div className="small">
            {answer.possible ? texts.can(hundredths(answer.seconds)) : <span className="loss">{texts.cannot}</span>}
            {' · '}
            {users.length > 0 ? words().timings.panel.users(used) : words().timings.panel.noUsers}
          </div>
        </div>
        <div className="row no-print">
          <Button
            size="compact-md"
            variant="default"
            aria-label={texts.open(mechanism.name)}
            onClick={() => onOpen(mechanism.id)}
          >
            {texts.openShort}
          </Button>
          {!edit.readOnly && (
            <Button
              size="compact-md"
              variant="subtle"
              aria-label={texts.remove(mechanism.name)}
              onClick={() => (users.length > 0 ? setAsking(true) : remove())}
            >
              {texts.removeShort}
            </Button>
          )}
        </div>
      </div>
      {asking && (
        <div role="alert" className="stack timing-note">
          <p>{texts.sure(mechanism.name, used)}</p>
          <div className="row">
            <Button size="compact-md" onClick={remove}>
              {texts.yes}
            </Button>
            <Button size="compact-md" variant="default" onClick={() => setAsking(false)}>
              {texts.no}
            </Button>
          </div>
        </div>
      )}
    </li>
  )
}
