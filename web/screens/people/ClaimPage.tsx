import { Button } from '@mantine/core'
import { Link, useLocation } from 'wouter'
import { useEntrance } from '../../data/people.ts'
import { words } from '../../words/catalogue.ts'
import { DeviceField, NicknameField, PassphraseField, Refusal } from './Fields.tsx'
import { useEntering } from './useEntering.ts'
import { useToken } from './useToken.ts'

/** Whoever holds the set-up link becomes the first lead. */
export function ClaimPage() {
  const texts = words().people
  const [, go] = useLocation()
  const token = useToken()
  const { claim } = useEntrance()
  const { values, field, send } = useEntering(['nickname', 'passphrase', 'device'])
  if (token === null)
    return (
      <div className="stack entrance">
        <h1>{texts.claim}</h1>
        <p role="alert">{texts.noToken}</p>
        <Link href="/">{texts.toStart}</Link>
      </div>
    )
  return (
    <form
      className="stack entrance"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        send(() => claim.mutate({ token, ...values }, { onSuccess: () => go('/people') }))
      }}
    >
      <h1>{texts.claim}</h1>
      <p>{texts.claimHow}</p>
      <NicknameField {...field('nickname', claim.error)} help={texts.nicknameHelp} />
      <PassphraseField {...field('passphrase', claim.error)} fresh />
      <DeviceField {...field('device', claim.error)} />
      <Refusal error={claim.error} />
      <div>
        <Button type="submit" loading={claim.isPending}>
          {texts.claimDo}
        </Button>
      </div>
    </form>
  )
}
