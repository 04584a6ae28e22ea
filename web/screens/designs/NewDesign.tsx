import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import { useLocation } from 'wouter'
import { getDocument } from '../../data/api.ts'
import { type Bodies, useChanges, useList } from '../../data/documents.ts'
import { idFrom } from '../../data/identity.ts'
import { firstRobot } from './firstRobot.ts'

/** A robot from one guess per leg, to be made better later. */
export function NewDesign() {
  const games = useList('game')
  const { save } = useChanges()
  const [, go] = useLocation()
  const [name, setName] = useState('')
  const [game, setGame] = useState('')
  const [trouble, setTrouble] = useState<string | null>(null)
  const list = games.data ?? []
  const chosen = game || list[0]?.id || ''
  const make = async () => {
    if (name.trim() === '') return setTrouble('Please give the robot a name.')
    setTrouble(null)
    try {
      const id = idFrom(name)
      const body = (await getDocument('game', chosen)).body as Bodies['game']
      const design: Bodies['design'] = { format: 1, game: chosen, robot: firstRobot(body, id, name.trim()) }
      const outcome = await save.mutateAsync({ kind: 'design', id, name: name.trim(), body: design, base: null })
      if ('saved' in outcome) go(`/designs/${id}`)
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  if (list.length === 0) return null
  return (
    <section className="sheet stack" aria-labelledby="new-design">
      <h2 id="new-design">Sketch a robot</h2>
      <p>It begins with one guess per leg, driving included. Split a leg into stages when you know more.</p>
      <div className="row" style={{ alignItems: 'end' }}>
        <TextInput label="Name" value={name} error={trouble} onChange={(event) => setName(event.currentTarget.value)} />
        <NativeSelect
          label="Game"
          value={chosen}
          data={list.map((entry) => ({ value: entry.id, label: entry.name }))}
          onChange={(event) => setGame(event.currentTarget.value)}
        />
        <Button onClick={() => void make()} loading={save.isPending}>
          Sketch it
        </Button>
      </div>
    </section>
  )
}
