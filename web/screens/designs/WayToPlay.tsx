import { Button, NativeSelect } from '@mantine/core'
import { memo, useState } from 'react'
import type { Game, Robot } from '../../../src/model/documents/types.ts'
import { firstOption } from '../../data/assemble.ts'
import { type Bodies, type Stored, useChanges } from '../../data/documents.ts'
import { idFrom } from '../../data/identity.ts'
import { Panel } from '../../shell/Panel.tsx'
import { words } from '../../words/catalogue.ts'
import { finishWords } from '../../words/explain.ts'
import { WayForm } from './WayForm.tsx'

/** Which way to play the points are computed for; to be changed, and new ones made. */
export const WayToPlay = memo(function WayToPlay(props: {
  game: Game
  design: string
  robot: Robot
  ways: Stored<'option'>[]
  chosen: string | null
  onChoose(id: string): void
}) {
  const texts = words().designs.ways
  const { game, robot, ways } = props
  const chosen = ways.find(({ id }) => id === props.chosen)
  const { save } = useChanges()
  const [open, setOpen] = useState(false)
  const [trouble, setTrouble] = useState<string | null>(null)
  const make = async () => {
    setTrouble(null)
    const name = texts.fresh(robot.name, ways.length + 1)
    const id = idFrom(name)
    const { robot: _, ...option } = { ...firstOption(game, robot), id, name }
    const body: Bodies['option'] = { format: 1, game: game.id, design: props.design, option }
    try {
      const outcome = await save.mutateAsync({ kind: 'option', id, name, body, base: null })
      if ('saved' in outcome) {
        props.onChoose(id)
        setOpen(true)
      }
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  return (
    <div className="stack" style={{ gap: '0.4rem' }}>
      <div className="row" style={{ alignItems: 'end' }}>
        {ways.length > 0 && (
          <NativeSelect
            label={texts.played}
            miw={300}
            value={props.chosen ?? ''}
            data={ways.map(({ id, name }) => ({ value: id, label: name }))}
            onChange={(event) => props.onChoose(event.currentTarget.value)}
          />
        )}
        {chosen && (
          <Button variant="default" onClick={() => setOpen(true)}>
            {texts.change}
          </Button>
        )}
        <Button variant="default" loading={save.isPending} onClick={() => void make()}>
          {texts.add}
        </Button>
      </div>
      {!chosen ? (
        <p className="soft small">{texts.none}</p>
      ) : (
        game.finishes.length > 0 && <p className="soft small">{texts.endgame(finishWords(chosen.body.option))}</p>
      )}
      {trouble && (
        <p role="alert" className="loss">
          {trouble}
        </p>
      )}
      <Panel title={texts.title} open={open && chosen !== undefined} onClose={() => setOpen(false)} side>
        {chosen && (
          <WayForm
            key={`${chosen.id}/${chosen.revision}`}
            game={game}
            robot={robot}
            stored={chosen}
            onCopied={props.onChoose}
          />
        )}
      </Panel>
    </div>
  )
})
