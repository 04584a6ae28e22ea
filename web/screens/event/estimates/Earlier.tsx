import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useMutation, useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { client, said } from '../../../data/api.ts'
import { useTyped } from '../../../data/useTyped.ts'
import { Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { listed } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { EarlierTable } from './EarlierTable.tsx'
import { type EarlierChoice, useKeepEarlier } from './useKeepEarlier.ts'

/** Whether an earlier event counts here, what that changes, and the lead's choice: asked for when it is opened. */
export function Earlier({ page }: { page: EventPage }) {
  const [open, setOpen] = useState(false)
  return (
    <details className="no-print" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{words().earlier.open}</summary>
      {open && <Offered page={page} />}
    </details>
  )
}

function Offered({ page }: { page: EventPage }) {
  const texts = words().earlier
  const { id } = page.event
  const found = useQuery({
    queryKey: ['event', id, 'estimates', 'earlier'],
    queryFn: () => said(client.estimates.earlier.query({ event: id })),
  })
  if (found.error && !found.data)
    return <Trouble title={texts.trouble} error={found.error} retry={() => void found.refetch()} />
  if (!found.data) return <Loading what={texts.what} />
  return (
    <div className="stack">
      <p>{texts.intro}</p>
      {found.data.length === 0 && !page.event.body.earlier ? (
        <p>{texts.none}</p>
      ) : (
        <Choosing page={page} offered={found.data} />
      )}
    </div>
  )
}

interface Offer {
  event: string
  name: string
  teams: number
  matches: number
}

/** What is typed: the discount in per cent, teams with commas between. */
interface Form {
  event: string
  discount: string
  changed: string
}

const formOf = (choice: EarlierChoice | undefined): Form => ({
  event: choice?.event ?? '',
  discount: String(Math.round(100 * (choice?.discount ?? 0.4))),
  changed: (choice?.changed ?? []).join(', '),
})

/** What the fields say, and what is wrong with them. */
function readForm({ event, discount, changed }: Form, teams: ReadonlySet<string>) {
  const percent = /^\d{1,3}$/.test(discount.trim()) && Number(discount) <= 100 ? Number(discount) : null
  const named = [...new Set(changed.split(/[,;\s]+/).filter(Boolean))]
  const strange = named.filter((team) => !teams.has(team))
  const choice: EarlierChoice | null =
    percent === null || strange.length > 0 || event === ''
      ? null
      : { event, discount: percent / 100, ...(named.length > 0 && { changed: named }) }
  return { percent, strange, choice }
}

function Choosing({ page, offered }: { page: EventPage; offered: readonly Offer[] }) {
  const texts = words().earlier
  const { id, body, revision } = page.event
  const { typed, type, forget } = useTyped<Form>(`earlier/${id}/${revision}`, formOf(body.earlier))
  const keep = useKeepEarlier(page)
  const teams = new Set(body.teams.map(({ team }) => team))
  const { percent, strange, choice } = readForm(typed, teams)
  const look = useMutation({
    mutationFn: ({ event: earlier, ...how }: EarlierChoice) =>
      said(client.estimates.withEarlier.mutate({ event: id, earlier, ...how })),
  })
  const set = (more: Partial<Form>) => {
    look.reset()
    type({ ...typed, ...more })
  }
  const save = async (next: EarlierChoice | undefined) => {
    if (await keep.save(next)) forget()
  }
  const changed = JSON.stringify(choice ?? undefined) !== JSON.stringify(body.earlier)
  const nameOf = (event: string) => offered.find((each) => each.event === event)?.name ?? event
  return (
    <>
      <div className="row" style={{ alignItems: 'start' }}>
        <NativeSelect
          label={texts.which}
          value={typed.event}
          data={[
            { value: '', label: texts.no },
            ...offered.map(({ event, name, teams: seen, matches }) => ({
              value: event,
              label: texts.choice(name, seen, matches),
            })),
            ...(typed.event !== '' && !offered.some(({ event }) => event === typed.event)
              ? [{ value: typed.event, label: typed.event }]
              : []),
          ]}
          onChange={({ currentTarget: { value } }) => set({ event: value })}
        />
        <TextInput
          label={texts.discount}
          description={texts.discountHow}
          inputMode="numeric"
          value={typed.discount}
          error={percent === null ? texts.badDiscount(typed.discount) : null}
          onChange={({ currentTarget: { value } }) => set({ discount: value })}
        />
        <TextInput
          label={texts.changed}
          description={texts.changedHow}
          value={typed.changed}
          error={strange.length > 0 ? texts.badChanged(listed(strange)) : null}
          onChange={({ currentTarget: { value } }) => set({ changed: value })}
        />
      </div>
      <div className="row">
        <Button
          variant="default"
          disabled={!choice}
          loading={look.isPending}
          onClick={() => choice && look.mutate(choice)}
        >
          {texts.look}
        </Button>
        {page.lead && typed.event !== '' && (
          <Button disabled={!choice || !changed} loading={keep.pending} onClick={() => void save(choice ?? undefined)}>
            {texts.take}
          </Button>
        )}
        {page.lead && typed.event === '' && (
          <Button disabled={!body.earlier} loading={keep.pending} onClick={() => void save(undefined)}>
            {texts.takeNone}
          </Button>
        )}
        {!page.lead && <span className="soft">{texts.lead}</span>}
      </div>
      {keep.before && (
        <p role="status">
          {body.earlier ? texts.taken(nameOf(body.earlier.event)) : texts.takenNone}{' '}
          <button type="button" className="opens" onClick={() => void save(keep.before?.choice)}>
            {texts.undo}
          </button>
        </p>
      )}
      {keep.trouble && (
        <p role="alert" className="loss">
          {keep.trouble}
        </p>
      )}
      {look.isPending && <Loading what={texts.looking} />}
      {look.error && (
        <p role="alert" className="loss">
          {texts.notLooked}: {(look.error as Error).message}
        </p>
      )}
      {look.data && <EarlierTable teams={look.data.teams} />}
    </>
  )
}
