import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { StandsPack } from '../../../codes/standsPack.ts'
import { api } from '../../../data/board.ts'
import { words } from '../../../words/catalogue.ts'
import { nameOfMatch } from '../matchNames.ts'
import type { Corrected } from './CorrectForm.tsx'
import { changesOf } from './changes.ts'

/** That a record was corrected, and the way back: by a further correction, which says what the first record said. */
export function CorrectedNote(props: { pack: StandsPack; corrected: Corrected; onUndone(): void }) {
  const { pack, corrected } = props
  const { before, after, team, record } = corrected
  const texts = words().records.correct
  const queries = useQueryClient()
  const undo = useMutation({
    mutationFn: async () => {
      const now = { ...after, id: record }
      const back = changesOf(now, { ...before.body, team }, { team: after.body.team, seat: before.seat })
      if (back) await api.correct({ event: before.event, record, reason: texts.takenBack, ...back })
    },
    onSuccess: props.onUndone,
    onSettled: () => queries.invalidateQueries({ queryKey: ['board', before.event] }),
  })
  return (
    <>
      <p role="status">
        {texts.saved(nameOfMatch(pack, after.body.match), after.body.team)}{' '}
        <button type="button" className="opens" disabled={undo.isPending} onClick={() => undo.mutate()}>
          {texts.undo}
        </button>
      </p>
      {undo.error && (
        <p role="alert" className="loss">
          {undo.error.message}
        </p>
      )}
    </>
  )
}

/** The last correction that was made here, until it is taken back or another follows. */
export function useCorrected() {
  const [corrected, setCorrected] = useState<Corrected | null>(null)
  const [undone, setUndone] = useState<Corrected | null>(null)
  const note = (pack: StandsPack) =>
    corrected ? (
      <CorrectedNote
        key={corrected.record}
        pack={pack}
        corrected={corrected}
        onUndone={() => {
          setUndone(corrected)
          setCorrected(null)
        }}
      />
    ) : (
      undone && (
        <p role="status">{words().records.correct.undone(nameOfMatch(pack, undone.before.body.match), undone.team)}</p>
      )
    )
  const take = (next: Corrected) => {
    setCorrected(next)
    setUndone(null)
  }
  return { take, note }
}
