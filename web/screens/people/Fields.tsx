import { PasswordInput, TextInput } from '@mantine/core'
import '@mantine/core/styles/PasswordInput.css'
import { words } from '../../words/catalogue.ts'

/** What a device may be called, before anybody says otherwise. */
export function usualName(): string {
  const texts = words().people
  const agent = navigator.userAgent
  if (/iPad|Tablet|Android(?!.*Mobile)/.test(agent)) return texts.tablet
  return /Mobile|iPhone/.test(agent) ? texts.phone : texts.browser
}

interface Field {
  value: string
  onChange(value: string): void
  error?: string | null | undefined
}

export const NicknameField = (props: Field & { help?: string }) => (
  <TextInput
    label={words().people.nickname}
    description={props.help}
    value={props.value}
    error={props.error}
    maxLength={40}
    autoComplete="username"
    autoCapitalize="words"
    onChange={(event) => props.onChange(event.currentTarget.value)}
  />
)

export const DeviceField = (props: Field) => (
  <TextInput
    label={words().people.device}
    value={props.value}
    error={props.error}
    maxLength={60}
    autoComplete="off"
    onChange={(event) => props.onChange(event.currentTarget.value)}
  />
)

/** `fresh`: one that is chosen now, so that a password manager offers to make one. */
export const PassphraseField = (props: Field & { label?: string; fresh?: boolean }) => (
  <PasswordInput
    label={props.label ?? words().people.passphrase}
    description={props.fresh ? words().people.passphraseHelp : undefined}
    value={props.value}
    error={props.error}
    maxLength={200}
    autoComplete={props.fresh ? 'new-password' : 'current-password'}
    onChange={(event) => props.onChange(event.currentTarget.value)}
  />
)

export const Refusal = (props: { error: Error | null }) =>
  props.error && (
    <p role="alert" className="loss">
      {props.error.message}
    </p>
  )
