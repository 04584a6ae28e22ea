import { Button, Checkbox, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { Device } from '../../../src/store/types.ts'
import { useDevices, usePeopleChanges } from '../../data/people.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { moment } from '../../words/format.ts'
import { Refusal } from './Fields.tsx'
import { Sure } from './Sure.tsx'

/** Where people are signed in, what is still to be sent from there, and the way out. */
export function Devices(props: { here: string | null }) {
  const texts = words().people
  const devices = useDevices()
  const { revoke, rename } = usePeopleChanges()
  const [withOut, setWithOut] = useState(false)
  if (devices.isPending) return <Loading what={texts.what} />
  if (!devices.data)
    return <Trouble title={texts.notLoaded} error={devices.error} retry={() => void devices.refetch()} />
  const shown = devices.data.filter(({ revokedAt }) => withOut || revokedAt === null)
  return (
    <section className="stack no-print">
      <h2>{texts.devices}</h2>
      {shown.length === 0 ? (
        <p>{texts.noDevices}</p>
      ) : (
        <div className="scroll people-table" tabIndex={0} role="region" aria-label={texts.devices}>
          <table className="tide">
            <thead>
              <tr>
                <th scope="col">{texts.deviceHead}</th>
                <th scope="col">{texts.member}</th>
                <th scope="col">{texts.seen}</th>
                <th scope="col" className="figure">
                  {texts.unsent}
                </th>
                <th scope="col">
                  <span className="visually-hidden">{texts.revoke}</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {shown.map((device) => (
                <Row
                  key={device.id}
                  device={device}
                  here={device.id === props.here}
                  onRevoke={() => revoke.mutate(device.id)}
                  onRename={(name) => rename.mutateAsync({ device: device.id, name })}
                />
              ))}
            </tbody>
          </table>
        </div>
      )}
      <Checkbox label={texts.showOut} checked={withOut} onChange={(event) => setWithOut(event.currentTarget.checked)} />
      <Refusal error={revoke.error ?? rename.error} />
    </section>
  )
}

function Row(props: { device: Device; here: boolean; onRevoke(): void; onRename(name: string): Promise<unknown> }) {
  const texts = words().people
  const { name, nickname, lastSeenAt, unsent, revokedAt } = props.device
  const [asked, setAsked] = useState(false)
  const [renaming, setRenaming] = useState(false)
  return (
    <tr>
      <th scope="row">
        {renaming ? (
          <NewName
            name={name}
            onClose={() => setRenaming(false)}
            onName={(next) => props.onRename(next).then(() => setRenaming(false))}
          />
        ) : (
          <>
            {name} {props.here && <span className="soft">({texts.thisOne})</span>}{' '}
            {revokedAt === null && (
              <button
                type="button"
                className="opens small"
                aria-label={texts.renameOf(name, nickname)}
                onClick={() => setRenaming(true)}
              >
                {texts.rename}
              </button>
            )}
          </>
        )}
      </th>
      <td>{nickname}</td>
      <td>{revokedAt === null ? moment(lastSeenAt) : texts.signedOutOn(moment(revokedAt))}</td>
      <td className="figure">{unsent}</td>
      <td>
        {revokedAt === null &&
          (asked ? (
            <Sure
              question={texts.sureRevoke(name, unsent)}
              yes={texts.reallyRevoke}
              onNo={() => setAsked(false)}
              onYes={props.onRevoke}
            />
          ) : (
            <Button variant="subtle" aria-label={texts.revokeOf(name, nickname)} onClick={() => setAsked(true)}>
              {texts.revoke}
            </Button>
          ))}
      </td>
    </tr>
  )
}

/** A device's new name, typed where the old one stood. */
function NewName(props: { name: string; onName(name: string): Promise<unknown>; onClose(): void }) {
  const texts = words().people
  const [name, setName] = useState(props.name)
  const [tried, setTried] = useState(false)
  const empty = name.trim() === ''
  return (
    <form
      className="row"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        setTried(true)
        // What went wrong stands under the table; what was typed stays here.
        if (!empty) props.onName(name.trim()).catch(() => {})
      }}
    >
      <TextInput
        aria-label={texts.newName}
        value={name}
        maxLength={60}
        autoComplete="off"
        autoFocus
        error={tried && empty ? texts.neededDevice : null}
        onChange={(event) => setName(event.currentTarget.value)}
      />
      <Button type="submit" variant="default">
        {texts.keepName}
      </Button>
      <Button variant="subtle" onClick={props.onClose}>
        {texts.not}
      </Button>
    </form>
  )
}
