import { TextInput } from '@mantine/core'
import { useQueryClient } from '@tanstack/react-query'
import { useId, useState } from 'react'
import type { MatchDriver } from '../../../../src/model/scouting/types.ts'
import { useChanges } from '../../../data/documents.ts'
import { useTyped } from '../../../data/useTyped.ts'
import { words } from '../../../words/catalogue.ts'
import { KeepRow } from '../KeepRow.tsx'
import { KeptNote } from '../KeptNote.tsx'
import { type About, runName } from './Answer.tsx'

const most = 60

/** What was noted before the last change, by event and team: the form itself begins anew with each revision. */
const undone = new Map<string, MatchDriver[]>()

/** Who drove in the matches of a robot: noted by a lead with the event, because no scout can see it. */
export function MatchDrivers({ page, report, team }: Pick<About, 'page' | 'report'> & { team: string }) {
  const texts = words().fieldCheck.drove
  const { id, revision: base, body } = page.event
  const played = report.runs.filter(({ kind }) => kind === 'match')
  const [ours, others] = [true, false].map((own) =>
    (body.drivers ?? []).filter((each) => (each.team === team) === own),
  ) as [MatchDriver[], MatchDriver[]]
  const noted = Object.fromEntries(ours.map(({ match, driver }) => [match, driver]))
  const form = useTyped<{ [match: string]: string }>(`drivers/${id}/${team}/${base}`, noted)
  const { save } = useChanges()
  const queries = useQueryClient()
  const [trouble, setTrouble] = useState<string | null>(null)
  const list = useId()
  const names = [...new Set(report.runs.flatMap(({ driver }) => driver ?? []))].sort()
  const key = `${id}/${team}`
  const before = undone.get(key)
  if (!page.lead || played.length === 0) return null

  const keep = async (own: MatchDriver[], way: MatchDriver[] | null) => {
    setTrouble(null)
    const { drivers: _, ...rest } = body
    const drivers = [...others, ...own]
    const next = drivers.length === 0 ? rest : { ...rest, drivers }
    try {
      const outcome = await save.mutateAsync({ kind: 'event', id, name: body.name, body: next, base })
      if ('conflict' in outcome) return setTrouble(texts.conflict)
      if (way === null) undone.delete(key)
      else undone.set(key, way)
      form.forget()
      await queries.invalidateQueries({ queryKey: ['event', id, 'estimates'] })
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  // What was noted of matches without times stays as it is.
  const typed = Object.entries(form.typed).flatMap(([match, driver]) =>
    driver.trim() === '' ? [] : [{ match, team, driver: driver.trim() }],
  )
  const dirty = JSON.stringify(typed) !== JSON.stringify(ours.map(({ match, driver }) => ({ match, team, driver })))
  return (
    <details className="no-print">
      <summary>{texts.title}</summary>
      <div className="stack">
        <p>{texts.how}</p>
        <KeptNote {...form} />
        <datalist id={list}>
          {names.map((name) => (
            <option key={name} value={name} />
          ))}
        </datalist>
        <div className="form-grid">
          {played.map((run) => (
            <TextInput
              key={run.id}
              label={runName(page, run)}
              value={form.typed[run.id] ?? ''}
              maxLength={most}
              list={list}
              autoComplete="off"
              onChange={({ currentTarget: { value } }) => form.type({ ...form.typed, [run.id]: value })}
            />
          ))}
        </div>
        <KeepRow
          texts={texts}
          disabled={!dirty}
          saving={save.isPending}
          onKeep={() => void keep(typed, ours)}
          onUndo={before === undefined ? null : () => void keep(before, null)}
          trouble={trouble}
        />
      </div>
    </details>
  )
}
