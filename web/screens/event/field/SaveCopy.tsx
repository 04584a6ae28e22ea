import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import { Link } from 'wouter'
import type { FromField } from '../../../../src/model/documents/records.ts'
import type { Robot } from '../../../../src/model/documents/types.ts'
import { type Bodies, useChanges } from '../../../data/documents.ts'
import { idFrom } from '../../../data/identity.ts'
import { words } from '../../../words/catalogue.ts'
import type { About } from './Answer.tsx'
import { DecisionLinks } from './DecisionLinks.tsx'

/** Keeps the moved design as a copy that says where its numbers come from. */
export function SaveCopy(props: About & { team: string; shifts: FromField['shifts']; robot: Robot }) {
  const texts = words().fieldCheck.back
  const { page, design, report, team, shifts, robot } = props
  const { save } = useChanges()
  const [typed, setTyped] = useState<string | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const [saved, setSaved] = useState<{ id: string; name: string } | null>(null)
  const name = typed ?? texts.copyName(design.name).slice(0, 120)
  const keep = async () => {
    if (name.trim() === '') return setTrouble(texts.noName)
    setTrouble(null)
    const id = idFrom(name)
    const runs = (kind: 'match' | 'practice') => report.runs.filter((run) => run.kind === kind).length
    const fromField: FromField = {
      design: { id: design.id, revision: design.revision },
      event: page.event.id,
      team,
      matches: runs('match'),
      practice: runs('practice'),
      trips: report.trips,
      shifts,
    }
    const body: Bodies['design'] = { ...design.body, robot: { ...robot, id, name: name.trim() }, fromField }
    try {
      const outcome = await save.mutateAsync({ kind: 'design', id, name: name.trim(), body, base: null })
      if ('saved' in outcome) setSaved({ id, name: name.trim() })
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  return (
    <>
      <div className="row" style={{ alignItems: 'end' }}>
        <TextInput
          label={texts.name}
          value={name}
          error={trouble}
          miw={280}
          onChange={({ currentTarget }) => setTyped(currentTarget.value)}
        />
        <Button disabled={shifts.length === 0} loading={save.isPending} onClick={() => void keep()}>
          {texts.save}
        </Button>
      </div>
      {saved && (
        <p role="status">
          {texts.saved} <Link href={`/designs/${saved.id}`}>{saved.name}</Link>
        </p>
      )}
      <DecisionLinks design={design.id} copy={saved?.id ?? null} />
    </>
  )
}
