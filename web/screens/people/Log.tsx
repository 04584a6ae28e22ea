import { Button } from '@mantine/core'
import { useState } from 'react'
import { useAudit, useDevices, usePeople } from '../../data/people.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { moment } from '../../words/format.ts'
import { entryText, told } from './entryText.ts'

/** What was changed, page by page; loaded when it is opened. */
export function Log() {
  const texts = words().people
  const [open, setOpen] = useState(false)
  return (
    <details className="no-print" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{texts.log}</summary>
      {open && <Entries />}
    </details>
  )
}

function Entries() {
  const texts = words().people
  const log = useAudit()
  const people = usePeople()
  const devices = useDevices()
  if (log.isPending) return <Loading what={texts.what} />
  if (!log.data) return <Trouble title={texts.notLoaded} error={log.error} retry={() => void log.refetch()} />
  const entries = log.data.pages.flat()
  const nickname = (id: string | null) =>
    id === null ? texts.somebody : (people.data?.find((person) => person.id === id)?.nickname ?? id)
  const device = (id: string | null) => (id === null ? '' : (devices.data?.find((each) => each.id === id)?.name ?? id))
  const named = (of: string) => people.data?.find((person) => person.id === of)?.nickname ?? device(of)
  if (entries.length === 0) return <p>{texts.logEmpty}</p>
  return (
    <div className="stack">
      <p className="soft">{texts.logHow}</p>
      <div className="scroll">
        <table className="tide people-log">
          <thead>
            <tr>
              <th scope="col">{texts.when}</th>
              <th scope="col">{texts.who}</th>
              <th scope="col">{texts.deviceHead}</th>
              <th scope="col">{texts.whatChanged}</th>
              <th scope="col">{texts.about}</th>
            </tr>
          </thead>
          <tbody>
            {entries.map((entry) => (
              <tr key={entry.sequence}>
                <td>{moment(entry.at)}</td>
                <td>{nickname(entry.person)}</td>
                <td>{device(entry.device)}</td>
                <td>{told(words().log.actions, entry.action)}</td>
                <td>{entryText(entry, named)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {log.hasNextPage && (
        <div>
          <Button variant="default" loading={log.isFetchingNextPage} onClick={() => void log.fetchNextPage()}>
            {texts.more}
          </Button>
        </div>
      )}
    </div>
  )
}
