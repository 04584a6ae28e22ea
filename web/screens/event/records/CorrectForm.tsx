import { Button, TextInput } from '@mantine/core'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { Row } from '../../../../src/model/scouting/types.ts'
import type { StandsPack } from '../../../codes/standsPack.ts'
import { api } from '../../../data/board.ts'
import { useTyped } from '../../../data/useTyped.ts'
import { words } from '../../../words/catalogue.ts'
import { KeptNote } from '../KeptNote.tsx'
import { nameOfPerson } from '../matchNames.ts'
import { AboutFields, DoneFields, NoteField } from './CorrectFields.tsx'
import { changesOf, rowWith } from './changes.ts'
import { DifferenceTable } from './DifferenceTable.tsx'
import { differencesOf } from './differences.ts'
import { factsOf } from './facts.ts'
import { readTyped, type TypedRecord, typedOf } from './typed.ts'

export type ObservationRow = Extract<Row, { kind: 'observation' }>

/** What was corrected, and what would bring it back. */
export interface Corrected {
  before: ObservationRow
  /** Whom it was about. */
  team: string
  after: ObservationRow
  /** Id of the record that is in force now. */
  record: string
}

/** A record as a form; what is saved is a new record that names this one. */
export function CorrectForm(props: {
  pack: StandsPack
  row: ObservationRow
  /** By the schedule as it is now. */
  team: string
  onDone(corrected: Corrected): void
  onBack(): void
}) {
  const { pack, row, team } = props
  const texts = words().records.correct
  const queries = useQueryClient()
  const { typed, type, forget, kept } = useTyped<TypedRecord>(`correction/${row.id}`, typedOf(row.body, team))
  const [tried, setTried] = useState(false)
  const [problems, setProblems] = useState<{ [field: string]: string }>({})
  const read = readTyped(typed, row.body, { game: pack.game.body, matches: pack.matches })
  const asked = 'body' in read ? changesOf(row, read.body, { team, seat: read.seat }) : null
  const next = 'body' in read ? rowWith(row, read.body, asked?.seat) : null
  const now: ObservationRow = { ...row, body: { ...row.body, team } }
  const { differ } = differencesOf(factsOf(pack, now), next ? factsOf(pack, next) : [])
  const send = useMutation({
    mutationFn: (of: NonNullable<typeof asked>) =>
      api.correct({ event: row.event, record: row.id, reason: typed.reason.trim(), ...of }),
    onSuccess: ({ added }) => {
      forget()
      props.onDone({ before: row, team, after: next!, record: added[0]! })
    },
    onSettled: () => queries.invalidateQueries({ queryKey: ['board', row.event] }),
  })
  const noReason = typed.reason.trim() === ''
  const save = () => {
    setTried(true)
    setProblems('problems' in read ? read.problems : {})
    if (asked && !noReason) send.mutate(asked)
  }
  const fields = {
    pack,
    typed,
    // A field is told to be wrong once one has tried to save it, and no longer than it is.
    problems: 'problems' in read && tried ? { ...problems, ...read.problems } : {},
    change: (change: Partial<TypedRecord>) => type({ ...typed, ...change }),
  }
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        save()
      }}
    >
      <h3>{texts.title(nameOfPerson(pack, row.scout))}</h3>
      <p className="soft">{texts.how}</p>
      <KeptNote kept={kept} forget={forget} />
      <AboutFields {...fields} />
      {!typed.absent && <DoneFields {...fields} />}
      <NoteField {...fields} />
      <section className="stack" aria-labelledby="what-changes">
        <h4 id="what-changes">{texts.changes}</h4>
        {'problems' in read ? (
          <p className="soft">{texts.wrong}</p>
        ) : asked === null ? (
          <p className="soft">{texts.unchanged}</p>
        ) : (
          <DifferenceTable
            differ={differ}
            first={words().records.differences.before}
            later={words().records.differences.after}
          />
        )}
      </section>
      <TextInput
        label={texts.reason}
        description={texts.reasonHelp}
        value={typed.reason}
        maxLength={500}
        required
        withAsterisk={false}
        error={tried && noReason ? texts.reasonMissing : null}
        onChange={(event) => fields.change({ reason: event.currentTarget.value })}
      />
      {send.error && (
        <p role="alert" className="loss">
          {send.error.message}
        </p>
      )}
      <div className="row">
        <Button type="submit" loading={send.isPending} disabled={'body' in read && asked === null}>
          {texts.save}
        </Button>
        <Button variant="default" onClick={props.onBack}>
          {words().records.panel.back}
        </Button>
      </div>
    </form>
  )
}
