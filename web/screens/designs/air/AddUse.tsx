import { Button, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import { pneumaticMechanisms, type StoredAir, sameLeg } from '../../../../src/model/documents/air.ts'
import type { TimedLeg } from '../../../../src/model/documents/timing.ts'
import type { Game, Robot } from '../../../../src/model/documents/types.ts'
import { useEdit } from '../../../shell/fields/EditContext.tsx'
import { words } from '../../../words/catalogue.ts'
import { legWords } from './legWords.ts'

const place = ['robot', 'air']
const inAutonomous = 'autonomous'

/** Counts a mechanism's strokes in another kind of trip, or in autonomous. */
export function AddUse(props: { game: Game; robot: Robot; air: StoredAir; legs: readonly TimedLeg[] }) {
  const { game, robot, air, legs } = props
  const edit = useEdit()
  const texts = words().air.uses
  const mechanisms = pneumaticMechanisms(robot)
  const [chosen, setChosen] = useState('')
  const [where, setWhere] = useState(inAutonomous)
  const mechanism = mechanisms.find(({ id }) => id === chosen)?.id ?? mechanisms[0]!.id
  const leg = legs[Number(where)] ?? null
  const known = leg
    ? air.trips.some((use) => use.mechanism === mechanism && sameLeg(use.leg, leg))
    : air.autonomous.some((use) => use.mechanism === mechanism)
  const add = () => {
    const use = { mechanism, out: 1, back: 1 }
    if (leg) edit.set([...place, 'trips'], [...air.trips, { leg, ...use }])
    else edit.set([...place, 'autonomous'], [...air.autonomous, use])
  }
  return (
    <fieldset>
      <legend>{texts.addTitle}</legend>
      <div className="row choices air-use">
        <NativeSelect
          label={texts.mechanism}
          value={mechanism}
          data={mechanisms.map(({ id, name }) => ({ value: id, label: name }))}
          onChange={(event) => setChosen(event.currentTarget.value)}
        />
        <NativeSelect
          label={texts.where}
          value={leg ? where : inAutonomous}
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
