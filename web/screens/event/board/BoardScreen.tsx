import { useState } from 'react'
import { Link } from 'wouter'
import { Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { EventNav } from '../EventNav.tsx'
import { useCorrected } from '../records/Corrected.tsx'
import { type Looked, RecordPanel } from '../records/RecordPanel.tsx'
import { useNamedPack } from '../useStandsPack.ts'
import { ApartRows } from './ApartRows.tsx'
import { Contradicting } from './Contradicting.tsx'
import { Expected } from './Expected.tsx'
import { Phones, silentHolders } from './Phones.tsx'
import { type Board, useBoard } from './useBoard.ts'
import './board.css'

/** What a lead watches while scouts record: who was to send what, what came, and what can not be right. */
export default function BoardScreen(props: { id: string }) {
  const texts = words().board
  const pack = useNamedPack(props.id)
  const { board, apart } = useBoard(props.id)
  const [looked, setLooked] = useState<Looked | null>(null)
  const corrected = useCorrected()
  const error = pack.error ?? board.error ?? apart.error
  if (error && !(pack.data && board.data && apart.data)) {
    const retry = () => void Promise.all([pack.refetch(), board.refetch(), apart.refetch()])
    return <Trouble title={texts.notLoaded} error={error} retry={retry} />
  }
  if (!pack.data || !board.data || !apart.data) return <Loading what={texts.loading} />
  return (
    <div className="stack wide">
      <div className="stack">
        <p className="small">
          <Link href={`/event/${props.id}`}>{pack.data.event.name}</Link>
        </p>
        <h1>{texts.title}</h1>
        <EventNav id={props.id} name={pack.data.event.name} place="board" />
        <p>{texts.intro}</p>
        <Sums board={board.data} />
        {!looked && corrected.note(pack.data)}
      </div>
      <Expected pack={pack.data} board={board.data} look={setLooked} />
      <Phones event={props.id} board={board.data} revision={pack.data.game.revision} />
      <ApartRows pack={pack.data} apart={apart.data} event={props.id} />
      <Contradicting pack={pack.data} board={board.data} event={props.id} look={setLooked} />
      {looked && (
        <RecordPanel
          key={JSON.stringify(looked)}
          pack={pack.data}
          looked={looked}
          note={corrected.note(pack.data)}
          onCorrected={corrected.take}
          onClose={() => setLooked(null)}
        />
      )}
    </div>
  )
}

/** What a lead has to see to, and where it stands on this long page. */
function Sums(props: { board: Board }) {
  const { matches, quarantined, contradictions } = props.board
  const texts = words().board.sums
  const late = matches.flatMap(({ seats }) => seats).filter(({ state }) => state === 'late').length
  const silent = silentHolders(props.board).length
  const sums = [
    { to: 'expected', says: texts.late(late), open: late > 0 },
    { to: 'phones', says: texts.silent(silent), open: silent > 0 },
    { to: 'apart', says: texts.apart(quarantined), open: quarantined > 0 },
    { to: 'contradicting', says: texts.contradicting(contradictions.length), open: contradictions.length > 0 },
  ]
  if (!sums.some(({ open }) => open)) return <p role="status">{texts.nothing}</p>
  return (
    <ul className="board-sums">
      {sums
        .filter(({ open }) => open)
        .map(({ to, says }) => (
          <li key={to}>
            <a href={`#${to}`}>{says}</a>
          </li>
        ))}
    </ul>
  )
}
