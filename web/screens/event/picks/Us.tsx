import { NativeSelect } from '@mantine/core'
import type { EventPack } from '../../../data/eventPack.ts'
import { useTyped } from '../../../data/useTyped.ts'
import { words } from '../../../words/catalogue.ts'

/** Whose order it is: our team as the event says, or whichever one chooses to look from. */
export function useUs({ event, own }: EventPack) {
  const { typed, type } = useTyped<string | null>(`picks/${event.id}/us`, null)
  const teams = event.teams.map(({ team }) => team)
  const us = typed !== null && teams.includes(typed) ? typed : (own[0] ?? null)
  const choice = (
    <NativeSelect
      className="picks-us no-print"
      label={words().picks.us}
      value={us ?? ''}
      data={[...(us === null ? [{ value: '', label: words().picks.chooseUs }] : []), ...teams]}
      onChange={(change) => type(change.currentTarget.value || null)}
    />
  )
  return { us, choice }
}
