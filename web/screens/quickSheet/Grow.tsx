import { Button, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import { Link } from 'wouter'
import type { QuickSheetRecord, QuickWay } from '../../../src/model/documents/quickSheet.ts'
import type { Game } from '../../../src/model/documents/types.ts'
import { useChanges } from '../../data/documents.ts'
import { words } from '../../words/catalogue.ts'
import { comparisonOf, type Grown, grownFrom } from './grown.ts'

/** A way becomes a design with whole trips and an option, all ways a trade-off: nothing is typed again. */
export function Grow(props: { game: Game; sheet: QuickSheetRecord; revision: number; faulty: boolean }) {
  const { game, sheet } = props
  const { save } = useChanges()
  const texts = words().quickSheet.grow
  const [chosen, setChosen] = useState('')
  const [made, setMade] = useState<{ href: string; text: string }[]>([])
  const [trouble, setTrouble] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const way = sheet.ways.find(({ id }) => id === chosen) ?? sheet.ways[0]
  if (!way) return null

  const keep = async (ways: readonly QuickWay[]): Promise<Grown[]> => {
    const all: Grown[] = []
    for (const each of ways) {
      const grown = grownFrom(game, each)
      const { robot } = grown.design
      await save.mutateAsync({ kind: 'design', id: robot.id, name: robot.name, body: grown.design, base: null })
      const { option } = grown.option
      await save.mutateAsync({ kind: 'option', id: option.id, name: option.name, body: grown.option, base: null })
      all.push(grown)
      setMade((before) => [...before, { href: `/designs/${robot.id}`, text: texts.design(robot.name) }])
    }
    return all
  }
  const attempt = async (work: () => Promise<void>) => {
    setTrouble(null)
    setMade([])
    setBusy(true)
    try {
      await work()
    } catch (error) {
      setTrouble((error as Error).message)
    } finally {
      setBusy(false)
    }
  }
  const one = () =>
    attempt(async () => {
      await keep([way])
    })
  const all = () =>
    attempt(async () => {
      const body = comparisonOf(sheet, { id: game.id, revision: props.revision }, await keep(sheet.ways))
      await save.mutateAsync({ kind: 'comparison', id: body.id, name: body.name, body, base: null })
      setMade((before) => [...before, { href: `/trade-offs/${body.id}`, text: texts.tradeOff(body.name) }])
    })
  const most = sheet.ways.length > 12
  return (
    <section className="sheet stack no-print" aria-labelledby="grow-title">
      <h2 id="grow-title">{texts.title}</h2>
      <p>{texts.how}</p>
      <div className="row" style={{ alignItems: 'end' }}>
        <NativeSelect
          label={texts.way}
          value={way.id}
          data={sheet.ways.map(({ id, name }) => ({ value: id, label: name }))}
          onChange={(event) => setChosen(event.currentTarget.value)}
        />
        <Button variant="default" loading={busy} disabled={props.faulty} onClick={() => void one()}>
          {texts.one}
        </Button>
        {sheet.ways.length > 1 && (
          <Button variant="default" loading={busy} disabled={props.faulty || most} onClick={() => void all()}>
            {texts.all}
          </Button>
        )}
      </div>
      {(props.faulty || most) && <p className="soft small">{props.faulty ? texts.faulty : texts.most}</p>}
      {trouble && (
        <p role="alert" className="loss">
          {trouble}
        </p>
      )}
      <div role="status">
        {made.length > 0 && (
          <>
            <p>{texts.made}</p>
            <ul>
              {made.map(({ href, text }) => (
                <li key={href}>
                  <Link href={href}>{text}</Link>
                </li>
              ))}
            </ul>
          </>
        )}
      </div>
    </section>
  )
}
