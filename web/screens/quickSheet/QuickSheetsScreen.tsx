import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import { useLocation } from 'wouter'
import { useChanges } from '../../data/documents.ts'
import { useGameChoice } from '../../data/useGameChoice.ts'
import { words } from '../../words/catalogue.ts'
import { DocumentList } from '../documents/DocumentList.tsx'
import { newSheet } from './newWay.ts'
import '../start/start.css'

export default function QuickSheetsScreen() {
  const texts = words().quickSheet
  return (
    <DocumentList kind="quickSheet" href="/quick-sheet" title={texts.title} noun={texts.noun} intro={texts.intro}>
      <NewSheet />
    </DocumentList>
  )
}

function NewSheet() {
  const { games, game, choose } = useGameChoice()
  const { save } = useChanges()
  const [, go] = useLocation()
  const [name, setName] = useState('')
  const [trouble, setTrouble] = useState<string | null>(null)
  const texts = words().quickSheet
  if (!games || !game) return null
  const make = async () => {
    if (name.trim() === '') return setTrouble(texts.nameNeeded)
    setTrouble(null)
    try {
      const body = newSheet({ id: game.id, revision: game.revision }, name.trim())
      const outcome = await save.mutateAsync({ kind: 'quickSheet', id: body.id, name: body.name, body, base: null })
      if ('saved' in outcome) go(`/quick-sheet/${body.id}`)
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  return (
    <section className="sheet stack" aria-labelledby="new-sheet">
      <h2 id="new-sheet">{texts.begin}</h2>
      <form
        className="row"
        style={{ alignItems: 'end' }}
        onSubmit={(event) => {
          event.preventDefault()
          void make()
        }}
      >
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
        <Button type="submit" loading={save.isPending}>
          {texts.make}
        </Button>
      </form>
    </section>
  )
}
