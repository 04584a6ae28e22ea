import { Textarea } from '@mantine/core'
import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { useChanges } from '../../../data/documents.ts'
import { useTyped } from '../../../data/useTyped.ts'
import { words } from '../../../words/catalogue.ts'
import type { EventPage } from '../EventFrame.tsx'
import { KeepRow } from '../KeepRow.tsx'
import { lessonsOf } from './said.ts'

const most = 2000

/** What was taken back last, by event: the form itself begins anew with each revision. */
const undone = new Map<string, string>()

/** What the team takes from the event: written by a lead, kept with the event. */
export function Lessons({ page }: { page: EventPage }) {
  const texts = words().after
  const { id, revision: base, body } = page.event
  const now = body.lessons ?? ''
  const { typed, type, forget } = useTyped(`lessons/${id}`, now)
  const { save } = useChanges()
  const queries = useQueryClient()
  const [trouble, setTrouble] = useState<string | null>(null)
  const keep = async (text: string, before: string | null) => {
    setTrouble(null)
    const { lessons: _, ...rest } = body
    const next = text.trim() === '' ? rest : { ...rest, lessons: text.trim() }
    try {
      const outcome = await save.mutateAsync({ kind: 'event', id, name: body.name, body: next, base })
      if ('conflict' in outcome) return setTrouble(texts.conflict)
      if (before === null) undone.delete(id)
      else undone.set(id, before)
      forget()
      await queries.invalidateQueries({ queryKey: ['event', id, 'estimates'] })
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  const lines = lessonsOf(page)
  const before = undone.get(id)
  if (!page.lead)
    return lines.length === 0 ? null : (
      <>
        <h3>{texts.lessons}</h3>
        <ul>
          {lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </>
    )
  return (
    <>
      <Textarea
        label={texts.lessons}
        description={texts.lessonsHow}
        autosize
        minRows={3}
        value={typed}
        error={typed.length > most ? texts.tooLong(typed.length) : null}
        onChange={({ currentTarget: { value } }) => type(value)}
      />
      <KeepRow
        texts={{ keep: texts.saveLessons, kept: texts.saved, undo: texts.undo }}
        disabled={typed.trim() === now || typed.length > most}
        saving={save.isPending}
        onKeep={() => void keep(typed, now)}
        onUndo={before === undefined ? null : () => void keep(before, null)}
        trouble={trouble}
      />
    </>
  )
}
