import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import { Link, useLocation, useSearch } from 'wouter'
import { useChanges, useList } from '../../data/documents.ts'
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
  const games = useList('game')
  const { save } = useChanges()
  const [, go] = useLocation()
  const [name, setName] = useState('')
  const [game, setGame] = useState('')
  // From a game's own page: the sheet is for that game.
  const asked = new URLSearchParams(useSearch()).get('game')
  const [trouble, setTrouble] = useState<string | null>(null)
  const texts = words().quickSheet
  const list = games.data ?? []
  const newest = [...list].sort((a, b) => b.savedAt.localeCompare(a.savedAt))[0]
  const chosen = list.find(({ id }) => id === (game || asked)) ?? newest
  if (games.data && !chosen)
    return (
      <p>
        {texts.noGame} <Link href="/games">{texts.toGames}</Link>
      </p>
    )
  const make = async () => {
    if (name.trim() === '') return setTrouble(texts.nameNeeded)
    setTrouble(null)
    try {
      const body = newSheet({ id: chosen!.id, revision: chosen!.revision }, name.trim())
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
          value={chosen?.id ?? ''}
          data={list.map((entry) => ({ value: entry.id, label: entry.name }))}
          onChange={(event) => setGame(event.currentTarget.value)}
        />
        <Button type="submit" loading={save.isPending} disabled={!chosen}>
          {texts.make}
        </Button>
      </form>
    </section>
  )
}
