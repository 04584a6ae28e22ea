import { Button } from '@mantine/core'
import { Link, useLocation } from 'wouter'
import { useEntrance, useWelcome } from '../../data/people.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { DeviceField, NicknameField, PassphraseField, Refusal } from './Fields.tsx'
import { type FieldName, useEntering } from './useEntering.ts'
import { useToken } from './useToken.ts'

/** Whoever scanned an invitation comes in with this device. */
export function JoinPage() {
  const texts = words().people
  const token = useToken()
  if (token === null) return <p role="alert">{texts.noToken}</p>
  return <Welcomed token={token} />
}

function Welcomed(props: { token: string }) {
  const texts = words().people
  const welcome = useWelcome(props.token)
  if (welcome.isPending) return <Loading what={texts.joining} />
  if (welcome.error)
    return (
      <Trouble title={texts.notGood} error={welcome.error} retry={() => void welcome.refetch()}>
        <p>
          <Link href="/">{texts.toStart}</Link>
        </p>
      </Trouble>
    )
  return <Form token={props.token} welcome={welcome.data} />
}

function Form(props: { token: string; welcome: NonNullable<ReturnType<typeof useWelcome>['data']> }) {
  const texts = words().people
  const [, go] = useLocation()
  const { accept } = useEntrance()
  const { workspace, role, nickname, needsPassphrase } = props.welcome
  const asked: FieldName[] = ['device']
  if (nickname === null) asked.push('nickname')
  if (needsPassphrase) asked.push('passphrase')
  const { values, field, send } = useEntering(asked)
  const come = () =>
    accept.mutate(
      {
        token: props.token,
        device: values.device,
        ...(nickname === null && { nickname: values.nickname }),
        ...(needsPassphrase && { passphrase: values.passphrase }),
      },
      {
        // The stands are a page of their own, which works without a network afterwards.
        onSuccess: ({ event }) => (role === 'scout' ? window.location.assign(standsOf(event)) : go('/')),
      },
    )
  return (
    <form
      className="stack entrance"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        send(come)
      }}
    >
      <h1>{texts.join}</h1>
      <p>
        {texts.invitedTo(workspace, texts.roles[role])} {nickname !== null && texts.invitedAs(nickname)}
      </p>
      {nickname === null && <NicknameField {...field('nickname', accept.error)} help={texts.nicknameHelp} />}
      {needsPassphrase && <PassphraseField {...field('passphrase', accept.error)} fresh />}
      <DeviceField {...field('device', accept.error)} />
      <Refusal error={accept.error} />
      <div>
        <Button type="submit" size="lg" loading={accept.isPending}>
          {texts.joinDo}
        </Button>
      </div>
    </form>
  )
}

const standsOf = (event: string | null): string =>
  event === null ? '/stands/' : `/stands/?event=${encodeURIComponent(event)}`
