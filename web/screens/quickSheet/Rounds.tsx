import { Button, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import type { QuickLegName, QuickSheetRecord } from '../../../src/model/documents/quickSheet.ts'
import { useRoundChanges, useRounds } from '../../data/rounds.ts'
import { Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { moment } from '../../words/format.ts'
import { SaveHere } from '../documents/SaveHere.tsx'
import { RoundFiles } from './RoundFiles.tsx'
import { RoundPanel } from './RoundPanel.tsx'

/** Rounds of blind guesses for the legs of this sheet: opening one, and those there are. */
export function Rounds(props: { sheet: QuickSheetRecord; saved: string; dirty: boolean }) {
  const { sheet } = props
  const texts = words().quickSheet.rounds
  const rounds = useRounds(props.saved)
  const { open, remove } = useRoundChanges(props.saved)
  const [wayId, setWay] = useState('')
  const [leg, setLeg] = useState<QuickLegName>('collect')
  const [shown, setShown] = useState<string | null>(null)
  const [removed, setRemoved] = useState<string | null>(null)
  const takeBack = async (code: string) => {
    try {
      await remove.mutateAsync({ code, undo: true })
      setRemoved(null)
    } catch {
      // Said below.
    }
  }
  const way = sheet.ways.find(({ id }) => id === wayId) ?? sheet.ways[0]
  const legs = (['collect', 'score', 'finish'] as const).filter((name) => name !== 'finish' || way?.finish != null)
  const asked = legs.includes(leg) ? leg : 'collect'
  const begin = async () => {
    try {
      const round = await open.mutateAsync({ sheet: props.saved, way: way!.id, leg: asked })
      setShown(round.code)
    } catch {
      // Said below.
    }
  }
  return (
    <section className="sheet stack no-print" aria-labelledby="rounds-title">
      <h2 id="rounds-title">{texts.title}</h2>
      <p>{texts.how}</p>
      {way && (
        <div className="row" style={{ alignItems: 'end' }}>
          <NativeSelect
            label={texts.way}
            value={way.id}
            data={sheet.ways.map(({ id, name }) => ({ value: id, label: name }))}
            onChange={(event) => setWay(event.currentTarget.value)}
          />
          <NativeSelect
            label={texts.leg}
            value={asked}
            data={legs.map((name) => ({ value: name, label: texts.legs[name] }))}
            onChange={(event) => setLeg(event.currentTarget.value as QuickLegName)}
          />
          <Button loading={open.isPending} disabled={props.dirty} onClick={() => void begin()}>
            {texts.open}
          </Button>
        </div>
      )}
      {!way && <p className="soft">{texts.noWay}</p>}
      {way && props.dirty && <SaveHere why={texts.saveFirst} />}
      {open.error && (
        <p role="alert" className="loss">
          {texts.notOpened} {open.error.message}
        </p>
      )}
      {rounds.error && <Trouble title={texts.notLoaded} error={rounds.error} retry={() => void rounds.refetch()} />}
      {(rounds.data?.length ?? 0) > 0 && (
        <>
          <h3>{texts.list}</h3>
          <ul className="shelf">
            {rounds.data?.map((round) => (
              <li key={round.code}>
                <span>
                  <strong>{round.code}</strong> · {texts.subject(texts.legs[round.leg], round.about.way)}
                  <br />
                  <span className="soft small">
                    {round.closedAt === null
                      ? texts.openNow(round.count)
                      : texts.closed(round.count, moment(round.closedAt))}
                  </span>
                </span>
                <Button
                  size="compact-md"
                  variant="default"
                  aria-label={texts.showOf(round.code)}
                  onClick={() => setShown(round.code)}
                >
                  {texts.show}
                </Button>
              </li>
            ))}
          </ul>
        </>
      )}
      {removed !== null && (
        <p role="status">
          {texts.removed(removed)}{' '}
          <button type="button" className="opens" onClick={() => void takeBack(removed)}>
            {texts.back}
          </button>
        </p>
      )}
      {remove.error && (
        <p role="alert" className="loss">
          {remove.error.message}
        </p>
      )}
      <RoundFiles
        saved={props.saved}
        name={sheet.name}
        closed={rounds.data?.filter(({ closedAt }) => closedAt !== null).length ?? 0}
      />
      {shown !== null && (
        <RoundPanel
          key={shown}
          code={shown}
          sheet={sheet}
          saved={props.saved}
          onClose={() => setShown(null)}
          onRemoved={() => {
            setRemoved(shown)
            setShown(null)
          }}
        />
      )}
    </section>
  )
}
