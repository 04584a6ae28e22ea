import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import { Link } from 'wouter'
import type { Game } from '../../../src/model/documents/types.ts'
import { useSaveReading } from '../../data/documents.ts'
import type { Draft } from '../../data/draft.ts'
import { idFrom } from '../../data/identity.ts'
import { Panel } from '../../shell/Panel.tsx'
import { words } from '../../words/catalogue.ts'

/** Keeps the changes as a reading of the rules, and leaves the printed rules the newest: one step. */
export function SaveReading(props: { game: string; draft: Draft<Game>; ready: boolean }) {
  const { game, draft, ready } = props
  const texts = words().games.reading
  const save = useSaveReading()
  const [open, setOpen] = useState(false)
  const [name, setName] = useState('')
  const [rule, setRule] = useState('')
  const [missing, setMissing] = useState(false)
  const [trouble, setTrouble] = useState<string | null>(null)
  const [made, setMade] = useState<{ name: string; revision: number; newest: number } | null>(null)
  const make = async () => {
    setTrouble(null)
    setMissing(name.trim() === '')
    if (name.trim() === '') return
    const reading = { id: idFrom(name), name: name.trim(), rule: rule.trim() }
    try {
      const outcome = await save.mutateAsync({ id: game, base: draft.base, body: draft.value, reading })
      if ('conflict' in outcome) return setTrouble(texts.between)
      const { saved } = outcome
      draft.rebase(saved.game.revision, saved.game.body as Game)
      setMade({ name: reading.name, revision: saved.game.revision - 1, newest: saved.game.revision })
      setName('')
      setRule('')
      setOpen(false)
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  return (
    <div className="stack" style={{ gap: '0.35rem' }}>
      <div>
        <Button variant="default" disabled={!draft.dirty || !ready} onClick={() => setOpen(true)}>
          {texts.open}
        </Button>
      </div>
      <p className="soft small" role="status">
        {made ? (
          <>
            {texts.made(made.name, made.revision, made.newest)}{' '}
            <Link href={`/games/${game}/consequences`}>{words().rulesChange.link}</Link>
          </>
        ) : draft.dirty && !ready ? (
          texts.notReady
        ) : (
          texts.how
        )}
      </p>
      <Panel title={texts.title} open={open} onClose={() => setOpen(false)}>
        <form
          className="stack"
          onSubmit={(event) => {
            event.preventDefault()
            void make()
          }}
        >
          <p>{texts.explained}</p>
          <TextInput
            label={words().rulesChange.readings.name}
            value={name}
            maxLength={200}
            error={missing && name.trim() === '' ? words().rulesChange.readings.nameNeeded : null}
            onChange={(event) => setName(event.currentTarget.value)}
          />
          <TextInput
            label={words().rulesChange.readings.rule}
            value={rule}
            maxLength={200}
            onChange={(event) => setRule(event.currentTarget.value)}
          />
          {trouble && (
            <p role="alert" className="loss">
              {trouble}
            </p>
          )}
          <div className="row">
            <Button type="submit" loading={save.isPending}>
              {texts.save}
            </Button>
            <Button variant="default" onClick={() => setOpen(false)}>
              {texts.leave}
            </Button>
          </div>
        </form>
      </Panel>
    </div>
  )
}
