import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import { useLocation } from 'wouter'
import { useChanges } from '../../data/documents.ts'
import { idFrom } from '../../data/identity.ts'
import { words } from '../../words/catalogue.ts'
import { firstPart } from './firstPart.ts'
import { type PartKind, partKinds } from './numbers.ts'

/** A part of a kind, opened at once for its own numbers. */
export function NewPart() {
  const texts = words().parts
  const { save } = useChanges()
  const [, go] = useLocation()
  const [name, setName] = useState('')
  const [kind, setKind] = useState<PartKind>('motor')
  const [trouble, setTrouble] = useState<string | null>(null)
  const make = async () => {
    if (name.trim() === '') return setTrouble(texts.fresh.noName)
    setTrouble(null)
    try {
      const id = idFrom(name)
      const part = firstPart(kind, { id, name: name.trim(), date: new Date().toISOString().slice(0, 10) })
      const outcome = await save.mutateAsync({
        kind: 'part',
        id,
        name: part.name,
        body: { format: 1, part },
        base: null,
      })
      if ('saved' in outcome) go(`/parts/${id}`)
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  return (
    <section className="sheet stack no-print" aria-labelledby="new-part">
      <h2 id="new-part">{texts.fresh.title}</h2>
      <p>{texts.fresh.help}</p>
      <div className="row" style={{ alignItems: 'end' }}>
        <NativeSelect
          label={texts.fresh.kind}
          value={kind}
          data={partKinds.map((value) => ({ value, label: texts.kinds[value] }))}
          onChange={(event) => setKind(event.currentTarget.value as PartKind)}
        />
        <TextInput
          label={texts.name}
          value={name}
          maxLength={200}
          error={trouble}
          onChange={(event) => setName(event.currentTarget.value)}
        />
        <Button onClick={() => void make()} loading={save.isPending}>
          {texts.fresh.button}
        </Button>
      </div>
    </section>
  )
}
