import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import { useLocation } from 'wouter'
import { getDocument } from '../../data/api.ts'
import { type Bodies, useChanges } from '../../data/documents.ts'
import { idFrom } from '../../data/identity.ts'
import { useGameChoice } from '../../data/useGameChoice.ts'
import { words } from '../../words/catalogue.ts'
import { firstRobot } from './firstRobot.ts'

/** A robot from one guess per leg, to be made better later. */
export function NewDesign() {
  const texts = words().designs.fresh
  const { games, game, choose } = useGameChoice()
  const { save } = useChanges()
  const [, go] = useLocation()
  const [name, setName] = useState('')
  const [trouble, setTrouble] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  if (!games || !game) return null
  const make = async () => {
    if (name.trim() === '') return setTrouble(texts.noName)
    setTrouble(null)
    setBusy(true)
    try {
      const id = idFrom(name)
      const body = (await getDocument('game', game.id)).body as Bodies['game']
      const design: Bodies['design'] = { format: 1, game: game.id, robot: firstRobot(body, id, name.trim()) }
      const outcome = await save.mutateAsync({ kind: 'design', id, name: name.trim(), body: design, base: null })
      if ('saved' in outcome) go(`/designs/${id}`)
    } catch (error) {
      setTrouble((error as Error).message)
    } finally {
      setBusy(false)
    }
  }
  return (
    <section className="sheet stack" aria-labelledby="new-design">
      <h2 id="new-design">{texts.title}</h2>
      <p>{texts.help}</p>
      <div className="row" style={{ alignItems: 'end' }}>
        <TextInput
          label={texts.name}
          value={name}
          error={trouble}
          onChange={(event) => setName(event.currentTarget.value)}
        />
        <NativeSelect
          label={texts.game}
          value={game.id}
          data={games.map((entry) => ({ value: entry.id, label: entry.name }))}
          onChange={(event) => choose(event.currentTarget.value)}
        />
        <Button onClick={() => void make()} loading={busy}>
          {texts.button}
        </Button>
      </div>
    </section>
  )
}
