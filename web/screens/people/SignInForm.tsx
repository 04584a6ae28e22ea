import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import { useEntrance } from '../../data/people.ts'
import { words } from '../../words/catalogue.ts'
import { DeviceField, NicknameField, PassphraseField, Refusal } from './Fields.tsx'
import { useEntering } from './useEntering.ts'

/** Nickname and passphrase. What is wrong is said without saying which of the two. */
export function SignInForm(props: { onDone(): void }) {
  const texts = words().people
  const { signIn } = useEntrance()
  const { values, field, send } = useEntering(['nickname', 'passphrase', 'device'])
  const [workspace, setWorkspace] = useState('')
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        send(() => signIn.mutate({ ...values, workspace: workspace.trim() }, { onSuccess: props.onDone }))
      }}
    >
      <NicknameField {...field('nickname')} />
      <PassphraseField {...field('passphrase')} />
      <DeviceField {...field('device')} />
      <details>
        <summary>{texts.otherWorkspace}</summary>
        <TextInput
          label={texts.workspace}
          value={workspace}
          maxLength={100}
          onChange={(event) => setWorkspace(event.currentTarget.value)}
        />
      </details>
      <Refusal error={signIn.error} />
      <div>
        <Button type="submit" loading={signIn.isPending}>
          {texts.signIn}
        </Button>
      </div>
      <p className="soft">{texts.byInvitation}</p>
    </form>
  )
}
