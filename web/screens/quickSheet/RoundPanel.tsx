import { NativeSelect } from '@mantine/core'
import { useState } from 'react'
import type { QuickSheetRecord } from '../../../src/model/documents/quickSheet.ts'
import { QrCode } from '../../charts/QrCode.tsx'
import { useReach, useRound } from '../../data/rounds.ts'
import { Panel } from '../../shell/Panel.tsx'
import { Loading, Trouble } from '../../shell/states.tsx'
import { TableDownload } from '../../shell/TableDownload.tsx'
import { words } from '../../words/catalogue.ts'
import { moment } from '../../words/format.ts'
import { guessesTable } from './guessesTable.ts'
import { RoundActs } from './RoundActs.tsx'
import { Spread } from './Spread.tsx'
import { TakeRange } from './TakeRange.tsx'

const everyMilliseconds = 2000

/** One round on the big screen: how to get in, how many have guessed, and when it is closed, what. */
export function RoundPanel(props: {
  code: string
  sheet: QuickSheetRecord
  saved: string
  onClose(): void
  onRemoved(): void
}) {
  const { code, sheet } = props
  const texts = words().quickSheet.rounds
  const round = useRound(code, everyMilliseconds)
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
          {found.closedAnyway && <p className="small">{texts.closedAnyway}</p>}
          {found.broughtAt !== null && <p className="small">{texts.brought(moment(found.broughtAt))}</p>}
          <RoundActs key={String(found.closedAt)} round={found} saved={props.saved} onRemoved={props.onRemoved} />
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
