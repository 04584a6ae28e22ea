import { Button } from '@mantine/core'
import { useState } from 'react'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import type { DriveInput } from '../../../src/model/timing/index.ts'
import type { Place } from '../../data/difference.ts'
import { valueAt } from '../../data/place.ts'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { sayQuantity } from '../../units/write.ts'
import { words } from '../../words/catalogue.ts'
import { gameLegs } from './gameLegs.ts'

/** The game's legs that a drive's three numbers are fitted to, and taking them anew. */
export function LegsField(props: { place: Place; game: Game; option: Option }) {
  const { place, game, option } = props
  const edit = useEdit()
  const texts = words().timingInputs
  const [busy, setBusy] = useState(false)
  const [trouble, setTrouble] = useState<string | null>(null)
  const legs = valueAt(edit.document, [...place, 'legs']) as DriveInput['legs']
  const lengths = (legs ?? []).map(({ length }) => length)
  const say = (length: number) => sayQuantity(length, 'length', undefined, 2)
  const take = async () => {
    setBusy(true)
    setTrouble(null)
    try {
      edit.set([...place, 'legs'], await gameLegs(game, option.robot))
    } catch (error) {
      setTrouble(texts.legs.trouble((error as Error).message))
    } finally {
      setBusy(false)
    }
  }
  return (
    <div className="whole-row stack" role="group" aria-label={texts.labels['drive']!['legs']}>
      <p className="small">
        {lengths.length > 0
          ? texts.legs.has(lengths.length, say(Math.min(...lengths)), say(Math.max(...lengths)))
          : texts.legs.none}
      </p>
      {!edit.readOnly && (
        <div>
          <Button size="compact-md" variant="default" loading={busy} onClick={() => void take()}>
            {texts.legs.take}
          </Button>
        </div>
      )}
      {trouble && (
        <p role="alert" className="loss small">
          {trouble}
        </p>
      )}
    </div>
  )
}
