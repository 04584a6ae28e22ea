import { Button, Checkbox, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import { Link, useLocation } from 'wouter'
import { getDocument } from '../../data/api.ts'
import { type Bodies, useAllStored, useChanges, useList } from '../../data/documents.ts'
import { idFrom } from '../../data/identity.ts'
import { useGameChoice } from '../../data/useGameChoice.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'

/** A comparison of stored ways to play of one game, at their newest revisions. */
export function NewTradeOff() {
  const text = words().tradeoffs.fresh
  const { games, game, choose, error: noGames, refetch } = useGameChoice()
  const options = useList('option')
  const bodies = useAllStored('option', options.data ?? [])
  const { save } = useChanges()
  const [, go] = useLocation()
  const [question, setQuestion] = useState('')
  const [chosen, setChosen] = useState<string[]>([])
  const [trouble, setTrouble] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const error = noGames ?? options.error ?? bodies.error
  if (error && !(games && bodies.data))
    return (
      <Trouble
        title={text.notLoaded}
        error={error}
        retry={() => {
          void refetch()
          void options.refetch()
          bodies.refetch()
        }}
      />
    )
  if (!games || !bodies.data) return <Loading what={text.loading} />
  if (!game) return null
  const ways = bodies.data.filter(({ body }) => body.game === game.id)
  const make = async () => {
    if (question.trim() === '') return setTrouble(text.questionNeeded)
    const picked = ways.filter(({ id }) => chosen.includes(id))
    if (picked.length < 2) return setTrouble(text.twoNeeded)
    setTrouble(null)
    setBusy(true)
    try {
      const id = idFrom(question)
      const designs = await Promise.all(picked.map(({ body }) => getDocument('design', body.design)))
      const body: Bodies['comparison'] = {
        format: 1,
        id,
        name: question.trim().slice(0, 60),
        question: question.trim(),
        game: { id: game.id, revision: game.revision },
        options: picked.map((option, index) => ({
          option: { id: option.id, revision: option.revision },
          design: { id: designs[index]!.id, revision: designs[index]!.revision },
        })),
        inputs: [],
        breakEven: null,
        seed: 1,
        result: null,
      }
      const outcome = await save.mutateAsync({ kind: 'comparison', id, name: body.name, body, base: null })
      if ('saved' in outcome) go(`/trade-offs/${id}`)
    } catch (error) {
      setTrouble((error as Error).message)
    } finally {
      setBusy(false)
    }
  }
  return (
    <section className="sheet stack" aria-labelledby="new-trade-off">
      <h2 id="new-trade-off">{text.title}</h2>
      <div className="row" style={{ alignItems: 'end' }}>
        <TextInput
          label={text.question}
          value={question}
          w={420}
          maw="100%"
          onChange={(event) => setQuestion(event.currentTarget.value)}
        />
        <NativeSelect
          label={text.game}
          value={game.id}
          data={games.map((entry) => ({ value: entry.id, label: entry.name }))}
          onChange={(event) => choose(event.currentTarget.value)}
        />
      </div>
      <fieldset>
        <legend>{text.ways}</legend>
        {ways.length < 2 && (
          <p className="soft">
            {ways.length === 0 ? text.none : text.onlyOne} <Link href="/designs">{text.toDesigns}</Link>
          </p>
        )}
        <div className="columns" style={{ gap: '0.6rem' }}>
          {ways.map((way) => (
            <Checkbox
              key={way.id}
              label={way.name}
              checked={chosen.includes(way.id)}
              onChange={(event) =>
                setChosen(event.currentTarget.checked ? [...chosen, way.id] : chosen.filter((id) => id !== way.id))
              }
            />
          ))}
        </div>
      </fieldset>
      {trouble && (
        <p role="alert" className="loss">
          {trouble}
        </p>
      )}
      <div>
        <Button onClick={() => void make()} loading={busy}>
          {text.make}
        </Button>
      </div>
    </section>
  )
}
