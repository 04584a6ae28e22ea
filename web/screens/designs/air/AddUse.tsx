import { Button, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import { pneumaticMechanisms, type StoredAir, sameLeg } from '../../../../src/model/documents/air.ts'
import type { TimedLeg } from '../../../../src/model/documents/timing.ts'
import type { Game, Robot } from '../../../../src/model/documents/types.ts'
import { useEdit } from '../../../shell/fields/EditContext.tsx'
import { words } from '../../../words/catalogue.ts'
import { legWords } from './legWords.ts'

const airPlace = ['robot', 'air']
const inAutonomous = 'autonomous'

/** Counts a mechanism's strokes in another kind of trip, or in autonomous. */
export function AddUse(props: { game: Game; robot: Robot; air: StoredAir; legs: readonly TimedLeg[] }) {
  const { game, robot, air, legs } = props
  const edit = useEdit()
  const texts = words().air.uses
  const mechanisms = pneumaticMechanisms(robot)
  const [chosen, setChosen] = useState('')
  const [where, setWhere] = useState<string | null>(null)
  const mechanism = mechanisms.find(({ id }) => id === chosen)?.id ?? mechanisms[0]!.id
  const counted = (one: TimedLeg) => air.trips.some((use) => use.mechanism === mechanism && sameLeg(use.leg, one))
  // Until something is chosen: the first kind of trip in which it is not counted.
  const free = legs.findIndex((one) => !counted(one))
  const place = where ?? (free < 0 ? inAutonomous : String(free))
  const leg = place === inAutonomous ? null : (legs[Number(place)] ?? null)
  const known = leg ? counted(leg) : air.autonomous.some((use) => use.mechanism === mechanism)
  const add = () => {
    const use = { mechanism, out: 1, back: 1 }
    if (leg) edit.set([...airPlace, 'trips'], [...air.trips, { leg, ...use }])
    else edit.set([...airPlace, 'autonomous'], [...air.autonomous, use])
  }
  return (
    <fieldset className="no-print">
      <legend>{texts.addTitle}</legend>
      <div className="row air-use">
        <NativeSelect
          label={texts.mechanism}
          value={mechanism}
          data={mechanisms.map(({ id, name }) => ({ value: id, label: name }))}
          onChange={(event) => setChosen(event.currentTarget.value)}
        />
        <NativeSelect
          label={texts.where}
          value={leg ? place : inAutonomous}
          data={[
            { value: inAutonomous, label: texts.autonomous },
            ...legs.map((one, index) => ({ value: String(index), label: legWords(game, robot, one) })),
          ]}
          onChange={(event) => setWhere(event.currentTarget.value)}
        />
        <Button variant="default" disabled={known} onClick={add}>
          {texts.add}
        </Button>
        {known && <span className="soft small">{texts.known}</span>}
      </div>
    </fieldset>
  )
}
