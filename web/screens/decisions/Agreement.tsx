import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { words } from '../../words/catalogue.ts'
import { agreedWhen, agreeing } from './agreement.ts'
import { Block } from './Block.tsx'

/** Who agreed and when. One tap adds the reader, one takes a name off, and one takes that back. */
export function Agreement(props: { decision: DecisionRecord }) {
  const { agreed } = props.decision
  const edit = useEdit()
  const texts = words().decisions
  const [changed, setChanged] = useState<{ said: string; before: DecisionRecord['agreed'] } | null>(null)
  const change = (next: DecisionRecord['agreed'], said: string) => {
    edit.set(['agreed'], next)
    setChanged({ said, before: agreed })
  }
  return (
    <Block title={texts.agreed}>
      {agreed.length > 0 ? (
        <ul className="agreed">
          {agreed.map(({ who, on }, index) => (
            // A line that nobody's name was put into yet is no agreement.
            <li key={`${who} ${on}`} className={who.trim() === '' ? 'no-print' : undefined}>
              {texts.agreedOn(who.trim() || '–', agreedWhen(on))}
              {!edit.readOnly && (
                <button
                  type="button"
                  className="opens no-print small"
                  aria-label={texts.agree.removeOf(who)}
                  onClick={() =>
                    change(
                      agreed.filter((_, other) => other !== index),
                      texts.agree.removed(who),
                    )
                  }
                >
                  {texts.agree.remove}
                </button>
              )}
            </li>
          ))}
        </ul>
      ) : (
        <p className="soft">{texts.nobody}</p>
      )}
      {changed && (
        <p role="status" className="no-print small">
          {changed.said}{' '}
          <button
            type="button"
            className="opens"
            onClick={() => {
              edit.set(['agreed'], changed.before)
              setChanged(null)
            }}
          >
            {texts.agree.undo}
          </button>
        </p>
      )}
      {!edit.readOnly && <Agree agreed={agreed} onAgreed={change} />}
    </Block>
  )
}

const remembered = 'cyclewright/who'

const lastName = (): string => {
  try {
    return localStorage.getItem(remembered) ?? ''
  } catch {
    return ''
  }
}

function Agree(props: {
  agreed: DecisionRecord['agreed']
  onAgreed(next: DecisionRecord['agreed'], said: string): void
}) {
  const texts = words().decisions.agree
  const [who, setWho] = useState(lastName)
  const [error, setError] = useState<string | null>(null)
  const agree = () => {
    const found = agreeing(props.agreed, who, new Date().toISOString())
    if ('error' in found) return setError(found.error)
    setError(null)
    try {
      localStorage.setItem(remembered, who.trim())
    } catch {
      // The name is asked again next time.
    }
    props.onAgreed(found.agreed, texts.added(who.trim()))
  }
  return (
    <form
      className="row no-print agree"
      aria-label={texts.title}
      onSubmit={(event) => {
        event.preventDefault()
        agree()
      }}
    >
      <TextInput
        label={texts.name}
        value={who}
        error={error}
        autoComplete="nickname"
        maxLength={60}
        onChange={(event) => setWho(event.currentTarget.value)}
      />
      <Button type="submit" variant="default">
        {texts.button}
      </Button>
      <span className="soft small">{texts.how}</span>
    </form>
  )
}
