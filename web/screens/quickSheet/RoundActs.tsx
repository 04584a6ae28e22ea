import { Button } from '@mantine/core'
import { useState } from 'react'
import type { Round } from '../../../src/store/types.ts'
import { closingKey } from '../../data/device.ts'
import { useRoundChanges } from '../../data/rounds.ts'
import { words } from '../../words/catalogue.ts'

/**
 * What can be done with a round: closing it while it is open, also from a browser that did not open it (that one may be
 * gone), and taking it off the sheet. Each asks once more.
 */
export function RoundActs(props: { round: Round; saved: string; onRemoved(): void }) {
  const { round } = props
  const { code } = round
  const texts = words().quickSheet.rounds
  const { close, remove } = useRoundChanges(props.saved)
  const [asked, setAsked] = useState<'close' | 'remove' | null>(null)
  const open = round.closedAt === null
  const foreign = open && round.keyed && closingKey(code) === null
  const out = round.arrived - round.count
  const removing = async () => {
    try {
      await remove.mutateAsync({ code })
      props.onRemoved()
    } catch {
      // Said below.
    }
  }
  const error = close.error ?? remove.error
  return (
    <div className="stack">
      {foreign && <p>{texts.elsewhere}</p>}
      {asked === null ? (
        <div className="row">
          {open && (
            <Button variant={foreign ? 'default' : 'filled'} onClick={() => setAsked('close')}>
              {foreign ? texts.closeHere : texts.close}
            </Button>
          )}
          <Button variant="subtle" onClick={() => setAsked('remove')}>
            {texts.remove}
          </Button>
        </div>
      ) : (
        <div className="row">
          <p>
            {asked === 'close' && out > 0 && <strong>{texts.stillOut(out)} </strong>}
            {asked === 'close'
              ? foreign
                ? texts.sureHere
                : texts.sure
              : open
                ? texts.sureRemoveOpen
                : texts.sureRemove}
          </p>
          {asked === 'close' ? (
            <Button loading={close.isPending} onClick={() => close.mutate({ code, anyway: foreign })}>
              {texts.really}
            </Button>
          ) : (
            <Button loading={remove.isPending} onClick={() => void removing()}>
              {texts.reallyRemove}
            </Button>
          )}
          <Button variant="default" onClick={() => setAsked(null)}>
            {texts.not}
          </Button>
        </div>
      )}
      {error && (
        <p role="alert" className="loss">
          {error.message}
        </p>
      )}
    </div>
  )
}
