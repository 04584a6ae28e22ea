import { Button, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import type { QuickSheetRecord } from '../../../src/model/documents/quickSheet.ts'
import { QrCode } from '../../charts/QrCode.tsx'
import { closingKey } from '../../data/device.ts'
import { useReach, useRound, useRoundChanges } from '../../data/rounds.ts'
import { Panel } from '../../shell/Panel.tsx'
import { Loading, Trouble } from '../../shell/states.tsx'
import { TableDownload } from '../../shell/TableDownload.tsx'
import { words } from '../../words/catalogue.ts'
import { guessesTable } from './guessesTable.ts'
import { Spread } from './Spread.tsx'
import { TakeRange } from './TakeRange.tsx'

const everyMilliseconds = 2000

/** One round on the big screen: how to get in, how many have guessed, and when it is closed, what. */
export function RoundPanel(props: { code: string; sheet: QuickSheetRecord; saved: string; onClose(): void }) {
  const { code, sheet } = props
  const texts = words().quickSheet.rounds
  const round = useRound(code, everyMilliseconds)
  const { close } = useRoundChanges(props.saved)
  const [sure, setSure] = useState(false)
  const found = round.data
  return (
    <Panel title={texts.panel(code)} open onClose={props.onClose}>
      {round.isPending && <Loading what={words().guess.loading} />}
      {round.error && !found && (
        <Trouble title={texts.notLoaded} error={round.error} retry={() => void round.refetch()} />
      )}
      {found && (
        <>
          <p>
            <strong>{texts.subject(texts.legs[found.leg], found.about.way)}</strong>
          </p>
          {found.closedAt === null ? (
            <>
              <Entrance code={code} />
              <p className="round-count" role="status">
                {texts.count(found.count)}
                {found.arrived > found.count && ` · ${texts.out(found.arrived - found.count)}`}
              </p>
              {found.keyed && closingKey(code) === null ? (
                <p>{texts.elsewhere}</p>
              ) : sure ? (
                <div className="row">
                  <p>
                    {found.arrived > found.count && <strong>{texts.stillOut(found.arrived - found.count)} </strong>}
                    {texts.sure}
                  </p>
                  <Button loading={close.isPending} onClick={() => close.mutate(code)}>
                    {texts.really}
                  </Button>
                  <Button variant="default" onClick={() => setSure(false)}>
                    {texts.not}
                  </Button>
                </div>
              ) : (
                <div>
                  <Button onClick={() => setSure(true)}>{texts.close}</Button>
                </div>
              )}
              {close.error && (
                <p role="alert" className="loss">
                  {close.error.message}
                </p>
              )}
            </>
          ) : found.guesses && found.guesses.length > 0 ? (
            <>
              <Spread guesses={found.guesses} />
              <TableDownload title={texts.csv(code)} table={() => guessesTable(texts.csv(code), found.guesses ?? [])} />
              <TakeRange sheet={sheet} round={found} guesses={found.guesses} />
            </>
          ) : (
            <p>{texts.nobody}</p>
          )}
        </>
      )}
    </Panel>
  )
}

const isHere = (host: string): boolean => /^(localhost|127\..*|\[::1\])$/.test(host)

/** The address for the phones, as text, code and picture; and what to do where no phone can get here. */
function Entrance(props: { code: string }) {
  const texts = words().quickSheet.rounds
  const reach = useReach()
  const here = isHere(location.hostname)
  const others = here ? (reach.data?.addresses ?? []) : [location.origin]
  const [chosen, setChosen] = useState<string | null>(null)
  const origin = chosen ?? others[0] ?? location.origin
  const address = `${origin}/guess/${props.code}`
  return (
    <>
      <div className="entrance">
        <QrCode text={address} label={texts.qr(address)} width={232} />
        <div className="stack">
          <p>{texts.type}</p>
          <p className="address">{address}</p>
          <p>
            {texts.code} <span className="code">{props.code}</span>
          </p>
        </div>
      </div>
      {here && others.length > 1 && (
        <NativeSelect
          label={texts.otherAddress}
          value={origin}
          data={others}
          onChange={(event) => setChosen(event.currentTarget.value)}
        />
      )}
      {here && reach.data && (
        <aside className="caution stack">
          {(reach.data.onlyHere || others.length === 0) && (
            <p>{reach.data.onlyHere ? texts.onlyHere : texts.unreachable}</p>
          )}
          <p>{texts.caution}</p>
        </aside>
      )}
    </>
  )
}
