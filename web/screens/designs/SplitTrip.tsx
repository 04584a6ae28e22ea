import { Button } from '@mantine/core'
import { useState } from 'react'
import type { Duration, Game, Robot, Trip } from '../../../src/model/documents/types.ts'
import { mean } from '../../../src/model/duration/index.ts'
import type { LegRequest } from '../../../src/model/leg/types.ts'
import type { Place } from '../../data/difference.ts'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { words } from '../../words/catalogue.ts'
import { seconds } from '../../words/format.ts'
import { askModel } from '../../worker/client.ts'
import { splitWhole } from './split.ts'

/** A whole trip grows into the drive that the field asks for and a stage with the rest: the number stays. */
export function SplitTrip(props: {
  place: Place
  trip: Trip & { whole: Duration }
  game: Game
  robot: Robot
  request: LegRequest
}) {
  const { trip, game, robot, request } = props
  const edit = useEdit()
  const texts = words().quickSheet.split
  const [busy, setBusy] = useState(false)
  const [trouble, setTrouble] = useState<string | null>(null)
  if (edit.readOnly) return null
  const split = async () => {
    setBusy(true)
    setTrouble(null)
    try {
      const route = await askModel('travel', { game, robot, from: request.from, to: request.spot }, { asked: true })
      const drive = route.seconds * mean(robot.drive.pace)
      const stages = splitWhole(trip, drive, texts.rest)
      const { whole: _, ...others } = trip as Trip & { whole: Duration; stages?: never }
      if (stages) edit.set(props.place, { ...others, stages })
      else setTrouble(texts.over(seconds(drive), seconds(mean(trip.whole))))
    } catch (error) {
      setTrouble((error as Error).message)
    } finally {
      setBusy(false)
    }
  }
  return (
    <div className="stack">
      <div>
        <Button variant="default" loading={busy} onClick={() => void split()}>
          {texts.split}
        </Button>
      </div>
      <p className="soft small">{texts.how}</p>
      {trouble && (
        <p role="alert" className="loss">
          {trouble}
        </p>
      )}
    </div>
  )
}
