import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import { useDevices } from '../../data/people.ts'
import { words } from '../../words/catalogue.ts'

/** Asks for the nickname before a person is deleted for good, and says what stays. */
export function Erase(props: { person: string; nickname: string; onYes(): void; onNo(): void }) {
  const texts = words().people
  const { nickname } = props
  const devices = useDevices()
  const [typed, setTyped] = useState('')
  const [tried, setTried] = useState(false)
  const unsent = (devices.data ?? [])
    .filter(({ person }) => person === props.person)
    .reduce((sum, device) => sum + device.unsent, 0)
  const isRight = typed.trim().toLowerCase() === nickname.trim().toLowerCase()
  return (
    <form
      className="stack"
      aria-label={texts.personal.eraseOf(nickname)}
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        setTried(true)
        if (isRight) props.onYes()
      }}
    >
      <p>{texts.personal.sure(nickname)}</p>
      {unsent > 0 && <p className="loss">{texts.personal.unsent(unsent)}</p>}
      <p className="soft">{texts.personal.left}</p>
      <TextInput
        label={texts.personal.type(nickname)}
        value={typed}
        error={tried && !isRight ? texts.personal.needed : null}
        maxLength={40}
        autoComplete="off"
        autoFocus
        onChange={(event) => setTyped(event.currentTarget.value)}
      />
      <div className="row">
        <Button type="submit">{texts.personal.really}</Button>
        <Button variant="default" onClick={props.onNo}>
          {texts.not}
        </Button>
      </div>
    </form>
  )
}
