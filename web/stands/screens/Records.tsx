import { useSyncExternalStore } from 'react'
import { outboxFile } from '../../codes/outboxFile.ts'
import { saveFile as save } from '../../tables/save.ts'
import { type Kept, recall } from '../data/database.ts'
import { shownState, tryAgain } from '../data/outbox.ts'
import { useLive } from '../parts/live.ts'
import { type Known, useKnown, useOutbox, useStanding } from '../parts/means.tsx'
import { go } from '../parts/place.ts'
import { Screen } from '../parts/Screen.tsx'
import { Sign } from '../parts/Sign.tsx'
import { useNow } from '../parts/useNow.ts'
import { beginCorrection } from '../record/begin.ts'
import { aboutName } from '../record/names.ts'
import { moment, useWords } from '../words/catalogue.ts'
import { useMoreWords } from '../words/more.ts'

/** Every record of this phone, with where it is. */
export function Records() {
  const texts = useWords().records
  const rows = useOutbox()
  const known = useKnown()
  const { database, sender } = useStanding()
  const refused = rows?.some(({ outcome }) => outcome === 'refused')
  return (
    <Screen title={texts.title}>
      <Way rows={rows ?? []} />
      {rows?.length === 0 && <p>{texts.none}</p>}
      {refused && (
        <button type="button" onClick={() => void tryAgain(database).then(() => sender.wake())}>
          {texts.resend}
        </button>
      )}
      {rows && known && (
        <ul className="records">
          {rows.map((kept) => (
            <Row key={kept.id} kept={kept} known={known} />
          ))}
        </ul>
      )}
      {rows && rows.length > 0 && (
        <div className="card">
          <button type="button" onClick={() => saveFile(rows)}>
            {texts.file}
          </button>
          <p className="soft small">{texts.fileHelp}</p>
        </div>
      )}
    </Screen>
  )
}

/** What the sender is at, and what the server says that it holds. */
function Way({ rows }: { rows: readonly Kept[] }) {
  const texts = useWords().records
  const { database, sender } = useStanding()
  const sending = useSyncExternalStore(sender.subscribe, sender.now)
  const receipt = useLive(() => recall(database, 'receipt'))
  const now = useNow(1000, sending.doing === 'waiting')
  const told = () => {
    switch (sending.doing) {
      case 'idle':
        return texts.idle
      case 'sending':
        return texts.sending
      case 'stopped':
        return texts.stopped
      default: {
        const seconds = Math.max(0, Math.ceil((sending.until - now) / 1000))
        if (sending.why === 'otherTab') return texts.waitTab
        return sending.why === 'busy' ? texts.waitBusy(seconds) : texts.waitNoServer(seconds)
      }
    }
  }
  return (
    <div className="card">
      <p role="status">{told()}</p>
      {receipt && (
        <p>
          {texts.receipt(
            receipt.held,
            rows.filter(({ device }) => device === receipt.device).length,
            moment(Date.parse(receipt.at)),
          )}{' '}
          {receipt.quarantined > 0 && texts.quarantined(receipt.quarantined)}
        </p>
      )}
      <button type="button" onClick={() => sender.wake()}>
        {texts.now}
      </button>
    </div>
  )
}

function Row({ kept, known }: { kept: Kept; known: Known }) {
  const texts = useWords()
  const { pit } = useMoreWords()
  const { database } = useStanding()
  const { row, outcome, why } = kept
  const state = shownState(kept, known.session ?? undefined)
  const pack = known.pack?.pack
  const nickname = pack?.people.find(({ id }) => id === kept.scout)?.nickname ?? kept.scout
  const said =
    outcome === 'quarantined'
      ? texts.records.apart
      : outcome === 'refused'
        ? `${texts.records.refused} ${why ?? ''}`
        : state === 'attention'
          ? texts.records.otherPerson(nickname)
          : null
  const { me } = known
  const correct = async () => {
    if (!me) return
    const id = await beginCorrection(database, { id: kept.id, me })
    if (id) go({ screen: 'draft', id })
  }
  const name =
    row.kind === 'observation'
      ? aboutName({ ...row.body, seat: row.seat ?? null, mode: 'timeline' }, pack?.matches ?? [])
      : pit.kinds[row.kind]
  return (
    <li className={`record ${state}`}>
      <Sign state={state} />
      <div>
        <p>
          <strong>{name}</strong>
        </p>
        <p className="soft small">
          {texts.states[state]} · {texts.records.sequence(row.sequence)} · {moment(Date.parse(row.made))}
          {row.kind === 'observation' && row.body.replaces && ` · ${texts.records.replaces}`}
        </p>
        {said && <p className="small">{said}</p>}
      </div>
      {row.kind === 'observation' && me?.id === kept.scout && (
        <button type="button" aria-label={`${texts.records.correct}: ${name}`} onClick={correct}>
          {texts.records.correct}
        </button>
      )}
    </li>
  )
}

/** The rows as they would be sent, photos included. */
function saveFile(rows: readonly Kept[]): void {
  const { name, text } = outboxFile(rows.map(({ row }) => row))
  save(name, text, 'application/json')
}
