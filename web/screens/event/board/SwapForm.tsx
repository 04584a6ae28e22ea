import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { StandsPack } from '../../../codes/standsPack.ts'
import { api } from '../../../data/board.ts'
import { words } from '../../../words/catalogue.ts'
import { nameOfMatch } from '../matchNames.ts'
import type { Board } from './useBoard.ts'

interface Done {
  match: string
  records: string[]
}

/** Exchanges all records of two robots of a match, and takes it back. */
export function SwapForm(props: { pack: StandsPack; board: Board; event: string }) {
  const { pack, board, event } = props
  const texts = words().board.swap
  const queries = useQueryClient()
  const [match, setMatch] = useState('')
  const [teams, setTeams] = useState<[string, string]>(['', ''])
  const [reason, setReason] = useState('')
  const [done, setDone] = useState<Done | null>(null)
  const swap = useMutation({
    mutationFn: (of: Done & { reason: string }) => api.swap({ event, ...of }),
    onSuccess: ({ added }, { match: of }) => {
      setDone(done === null ? { match: of, records: added } : null)
      return queries.invalidateQueries({ queryKey: ['board', event] })
    },
  })
  const watched = board.matches.filter(({ seats }) => seats.filter(({ records }) => records.length > 0).length > 1)
  const seats = watched.find((each) => each.match === match)?.seats.filter(({ records }) => records.length > 0) ?? []
  const records = seats.filter(({ team }) => teams.includes(team)).flatMap((seat) => seat.records)
  const ready = teams[0] !== '' && teams[1] !== '' && teams[0] !== teams[1] && reason.trim() !== ''
  if (watched.length === 0) return null
  return (
    <form
      className="stack"
      onSubmit={(submitted) => {
        submitted.preventDefault()
        if (ready) swap.mutate({ match, records, reason })
      }}
    >
      <h3>{texts.title}</h3>
      <p>{texts.help}</p>
      <div className="row">
        <NativeSelect
          label={texts.match}
          value={match}
          onChange={({ currentTarget: { value } }) => {
            setMatch(value)
            setTeams(['', ''])
            setDone(null)
          }}
          data={[
            { value: '', label: texts.choose },
            ...watched.map((each) => ({ value: each.match, label: nameOfMatch(pack, each.match) })),
          ]}
        />
        {([0, 1] as const).map((index) => (
          <NativeSelect
            key={index}
            label={index === 0 ? texts.first : texts.second}
            value={teams[index]}
            onChange={({ currentTarget: { value } }) => {
              setTeams(index === 0 ? [value, teams[1]] : [teams[0], value])
              setDone(null)
            }}
            data={[{ value: '', label: texts.choose }, ...seats.map(({ team }) => team)]}
          />
        ))}
        <TextInput label={texts.reason} value={reason} onChange={({ currentTarget: { value } }) => setReason(value)} />
      </div>
      {swap.error && (
        <p role="alert" className="loss">
          {swap.error.message}
        </p>
      )}
      <div className="row">
        <Button type="submit" variant="default" disabled={!ready} loading={swap.isPending}>
          {texts.swap}
        </Button>
        {done && (
          <Button variant="default" onClick={() => swap.mutate({ ...done, reason: texts.undone })}>
            {texts.undo}
          </Button>
        )}
      </div>
      {done && <p role="status">{texts.done}</p>}
    </form>
  )
}
