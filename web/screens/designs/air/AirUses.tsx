import { Button } from '@mantine/core'
import type { AirUse, StoredAir } from '../../../../src/model/documents/air.ts'
import { pneumaticMechanisms, sameLeg } from '../../../../src/model/documents/air.ts'
import type { Game, Robot } from '../../../../src/model/documents/types.ts'
import { sameUse, usesByStages } from '../../../../src/model/timing/index.ts'
import type { Place } from '../../../data/difference.ts'
import { forgetTexts, problemAt, useEdit } from '../../../shell/fields/EditContext.tsx'
import { NumberField } from '../../../shell/fields/NumberField.tsx'
import { words } from '../../../words/catalogue.ts'
import { listed } from '../../../words/format.ts'
import { AddUse } from './AddUse.tsx'
import { sayPressure } from './airProblems.ts'
import { legsOf, legWords } from './legWords.ts'
import { pressureOf } from './pressureOf.ts'

const place = ['robot', 'air'] as const

/** What moves in which kind of trip and in autonomous, and how often. */
export function AirUses(props: { game: Game; robot: Robot; air: StoredAir }) {
  const { game, robot, air } = props
  const edit = useEdit()
  const texts = words().air.uses
  const mechanisms = pneumaticMechanisms(robot)
  const names = new Map((robot.mechanisms ?? []).map(({ id, name }) => [id, name]))
  const named = (id: string) => names.get(id) ?? id
  const legs = legsOf(robot)
  const missing = usesByStages(robot).filter((use) => !air.trips.some((other) => sameUse(other, use)))
  const row = (use: AirUse, where: string) => texts.row(named(use.mechanism), where)
  const without = (key: 'trips' | 'autonomous', index: number) => {
    forgetTexts(edit, [...place, key])
    edit.set(
      [...place, key],
      (air[key] as AirUse[]).filter((_, other) => other !== index),
    )
  }
  const notes = (use: AirUse, gone: boolean): string[] => {
    const mechanism = mechanisms.find(({ id }) => id === use.mechanism)
    const own = mechanism ? pressureOf(mechanism) : air.working
    return [
      ...(gone ? [texts.gone] : []),
      ...(Math.abs(own - air.working) > 0.01 * air.working
        ? [texts.otherPressure(sayPressure(own), sayPressure(air.working))]
        : []),
    ]
  }
  return (
    <div className="stack">
      {mechanisms.length === 0 ? <p>{texts.noMechanism}</p> : <p className="soft small">{texts.help}</p>}
      {air.trips.length + air.autonomous.length === 0 && mechanisms.length > 0 && <p>{texts.empty}</p>}
      {air.trips.map((use, index) => (
        <UseRow
          // biome-ignore lint/suspicious/noArrayIndexKey: two uses may be alike
          key={index}
          place={[...place, 'trips', index]}
          title={row(use, legWords(game, robot, use.leg))}
          mechanism={named(use.mechanism)}
          where={legWords(game, robot, use.leg)}
          notes={notes(use, !legs.some((leg) => sameLeg(leg, use.leg)))}
          onRemove={() => without('trips', index)}
        />
      ))}
      {air.autonomous.map((use, index) => (
        <UseRow
          // biome-ignore lint/suspicious/noArrayIndexKey: two uses may be alike
          key={index}
          place={[...place, 'autonomous', index]}
          title={row(use, texts.autonomous)}
          mechanism={named(use.mechanism)}
          where={texts.autonomous}
          notes={notes(use, false)}
          onRemove={() => without('autonomous', index)}
        />
      ))}
      {missing.length > 0 && (
        <div className="stack">
          <p>{texts.missing(listed(missing.map((use) => row(use, legWords(game, robot, use.leg)))))}</p>
          {!edit.readOnly && (
            <div>
              <Button
                variant="default"
                size="compact-md"
                onClick={() => edit.set([...place, 'trips'], [...air.trips, ...missing])}
              >
                {texts.takeStages}
              </Button>
            </div>
          )}
        </div>
      )}
      {!edit.readOnly && mechanisms.length > 0 && <AddUse game={game} robot={robot} air={air} legs={legs} />}
    </div>
  )
}

function UseRow(props: {
  place: Place
  title: string
  mechanism: string
  where: string
  notes: string[]
  onRemove: () => void
}) {
  const { place, title, mechanism, where } = props
  const edit = useEdit()
  const texts = words().air.uses
  const problem =
    problemAt(edit.problems, [...place, 'mechanism']) ??
    ['source', 'goal', 'finish'].map((key) => problemAt(edit.problems, [...place, 'leg', key])).find(Boolean)
  const rules = { min: 0, max: 100, step: 1 }
  return (
    <fieldset className="routine-row">
      <legend>{title}</legend>
      <div className="row air-use">
        <NumberField place={[...place, 'out']} label={texts.out} {...rules} />
        <NumberField place={[...place, 'back']} label={texts.back} {...rules} />
        {!edit.readOnly && (
          <Button
            className="no-print"
            variant="subtle"
            aria-label={texts.removeOf(texts.row(mechanism, where))}
            onClick={props.onRemove}
          >
            {texts.remove}
          </Button>
        )}
      </div>
      {problem && <p className="loss small">{problem}</p>}
      {props.notes.map((note) => (
        <p key={note} className="soft small">
          {note}
        </p>
      ))}
    </fieldset>
  )
}
