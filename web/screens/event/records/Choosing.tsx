import { Button, TextInput } from '@mantine/core'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { StandsPack } from '../../../codes/standsPack.ts'
import { api } from '../../../data/board.ts'
import { words } from '../../../words/catalogue.ts'
import { nameOfPerson } from '../matchNames.ts'
import type { InForce } from './RecordPanel.tsx'

/** Several records of one robot in one match: which of them counts. */
export function Choosing(props: { pack: StandsPack; match: string; team: string; records: readonly InForce[] }) {
  const { pack, match, team, records } = props
  const event = pack.event.id
  const texts = words().records.choice
  const queries = useQueryClient()
  const [reason, setReason] = useState('')
  const choices = useQuery({ queryKey: ['board', event, 'choices'], queryFn: () => api.choices(event) })
  const choose = useMutation({
    mutationFn: (record: string | null) =>
      api.choose({ event, match, team, record, ...(reason.trim() === '' ? {} : { reason: reason.trim() }) }),
    onSuccess: () => setReason(''),
    onSettled: () => queries.invalidateQueries({ queryKey: ['board', event] }),
  })
  const by = (record: InForce) => nameOfPerson(pack, record.row.scout)
  const only = records.some(({ counts }) => !counts) ? records.find(({ counts }) => counts) : undefined
  const last = choices.data?.findLast((choice) => choice.match === match && choice.team === team)
  return (
    <section className="stack record-choice" aria-label={words().records.panel.title(match, team)}>
      {only ? (
        <>
          <p role="status">
            <strong>{texts.only(by(only))}</strong> {last?.reason && texts.because(last.reason)}
          </p>
          <div>
            <Button variant="default" loading={choose.isPending} onClick={() => choose.mutate(null)}>
              {texts.all}
            </Button>
          </div>
        </>
      ) : (
        <>
          <p role="status">{texts.several(records.length)}</p>
          <p className="soft">{texts.help}</p>
          <TextInput
            label={texts.reason}
            value={reason}
            maxLength={500}
            onChange={(change) => setReason(change.currentTarget.value)}
          />
          <div className="row">
            {records.map((record) => (
              <Button
                key={record.row.id}
                variant="default"
                loading={choose.isPending}
                onClick={() => choose.mutate(record.row.id)}
              >
                {texts.chooseOf(by(record))}
              </Button>
            ))}
          </div>
        </>
      )}
      {choose.error && (
        <p role="alert" className="loss">
          {choose.error.message}
        </p>
      )}
    </section>
  )
}
