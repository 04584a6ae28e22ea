import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import { useLocation } from 'wouter'
import { useChanges } from '../../data/documents.ts'
import { idFrom } from '../../data/identity.ts'
import { words } from '../../words/catalogue.ts'
import { firstGame } from './firstGame.ts'

/** A game from nothing but its name and what is scored. */
export function NewGame() {
  const texts = words().games.fresh
  const { save } = useChanges()
  const [, go] = useLocation()
  const [name, setName] = useState('')
  const [piece, setPiece] = useState('')
  const [tried, setTried] = useState(false)
  const [trouble, setTrouble] = useState<string | null>(null)
  const begin = async () => {
    setTried(true)
    if (name.trim() === '' || piece.trim() === '') return
    setTrouble(null)
    try {
      const id = idFrom(name)
      const body = firstGame(id, name.trim(), piece.trim())
      const outcome = await save.mutateAsync({ kind: 'game', id, name: body.name, body, base: null })
      if ('saved' in outcome) go(`/games/${id}`)
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  return (
    <section className="sheet stack" aria-labelledby="new-game">
      <h2 id="new-game">{texts.title}</h2>
      <p>{texts.help}</p>
      <form
        className="row"
        style={{ alignItems: 'start' }}
        onSubmit={(event) => {
          event.preventDefault()
          void begin()
        }}
      >
        <TextInput
          label={texts.name}
          value={name}
          maxLength={200}
          error={tried && name.trim() === '' ? texts.noName : null}
          onChange={(event) => setName(event.currentTarget.value)}
        />
        <TextInput
          label={texts.piece}
          description={texts.pieceHelp}
          value={piece}
          maxLength={200}
          error={tried && piece.trim() === '' ? texts.noPiece : null}
          onChange={(event) => setPiece(event.currentTarget.value)}
        />
        <Button type="submit" loading={save.isPending} style={{ marginTop: '1.6rem' }}>
          {texts.button}
        </Button>
      </form>
      {trouble && (
        <p role="alert" className="loss">
          {trouble}
        </p>
      )}
    </section>
  )
}
