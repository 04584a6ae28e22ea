import { Button } from '@mantine/core'
import { useEffect, useRef, useState } from 'react'
import type { Offer } from '../../../../src/model/picks/playoffs/offer.ts'
import { onTurn, type Selection } from '../../../../src/model/picks/selection/index.ts'
import { words } from '../../../words/catalogue.ts'
import { percent } from '../../../words/format.ts'
import { askModel } from '../../../worker/client.ts'
import type { PicksAsk, PicksEvent } from '../../../worker/protocol.ts'
import { gainSaid } from './OrderList.tsx'
import { formatOf } from './rules.ts'

/** Ways in which selection and playoffs go on. */
const runs = 2000

type State =
  | { kind: 'idle' }
  | { kind: 'asking' }
  | { kind: 'told'; offer: Offer }
  | { kind: 'failed'; message: string }

/** Another alliance is on turn and may invite us: accept or decline, by the chance to win the event. */
export function OfferPart(props: {
  of: PicksEvent
  ask: PicksAsk
  selection: Selection
  playoff: Parameters<typeof formatOf>[0]
}) {
  const { of, ask, selection, playoff } = props
  const texts = words().picks
  const [state, setState] = useState<State>({ kind: 'idle' })
  const asking = useRef<AbortController | null>(null)
  const key = JSON.stringify([of.key, ask])
  // biome-ignore lint/correctness/useExhaustiveDependencies: another state of the selection is another question
  useEffect(() => {
    setState({ kind: 'idle' })
    return () => asking.current?.abort()
  }, [key])
  const { turn, free, rules } = selection.state
  if (!turn || onTurn(selection.state, ask.us) || !free.includes(ask.us)) return null
  const compare = () => {
    const own = new AbortController()
    asking.current = own
    setState({ kind: 'asking' })
    askModel(
      'picksOffer',
      { of, ask, format: formatOf(playoff, rules.alliances), runs },
      { signal: own.signal, asked: true },
    ).then(
      (offer) => setState({ kind: 'told', offer }),
      (error: Error) => {
        if (asking.current === own)
          setState(own.signal.aborted ? { kind: 'idle' } : { kind: 'failed', message: error.message })
      },
    )
  }
  return (
    <section className="sheet stack no-print" aria-labelledby="offer">
      <h2 id="offer">{texts.offer(turn.alliance)}</h2>
      {state.kind === 'told' ? (
        <Told offer={state.offer} />
      ) : (
        <p>{state.kind === 'failed' ? state.message : texts.offerHow}</p>
      )}
      <div className="row">
        {state.kind === 'asking' ? (
          <>
            <span role="status">{texts.comparing}</span>
            <Button variant="default" onClick={() => asking.current?.abort()}>
              {texts.stop}
            </Button>
          </>
        ) : (
          <Button variant="default" onClick={compare}>
            {texts.compare}
          </Button>
        )}
      </div>
    </section>
  )
}

function Told({ offer }: { offer: Offer }) {
  const texts = words().picks
  const { accept, decline, difference } = offer
  const settled = Math.abs(difference.wins) > 2 * difference.error
  return (
    <>
      <p className="answer" role="status">
        {settled ? (difference.wins > 0 ? texts.betterAccept : texts.betterDecline) : texts.noDifference}
      </p>
      <p>
        {texts.offerTold(percent(accept.wins), percent(decline.wins), gainSaid(difference.wins))}{' '}
        {texts.offerError(
          gainSaid(difference.wins - 2 * difference.error),
          gainSaid(difference.wins + 2 * difference.error),
        )}{' '}
        {texts.offerPlays(percent(decline.plays))}
      </p>
      <p className="soft small">{texts.offerAssumes}</p>
    </>
  )
}
