import { NativeSelect } from '@mantine/core'
import { useMemo, useState } from 'react'
import { type FieldLeg, withShift } from '../../../../src/model/scouting/field/writeBack.ts'
import { useMayDesign } from '../../../data/events.ts'
import { words } from '../../../words/catalogue.ts'
import { legWords } from '../../designs/air/legWords.ts'
import type { About } from './Answer.tsx'
import { BeforeAfter } from './BeforeAfter.tsx'
import { SaveCopy } from './SaveCopy.tsx'
import { signedSeconds } from './said.ts'

const none = '-'
const keyOf = ({ leg }: FieldLeg) => JSON.stringify(leg)

/** The field's times into a copy of the design: for each leg the reader chooses the stage that takes the difference. */
export function WriteBack({ page, design, report, team }: About & { team: string }) {
  const texts = words().fieldCheck.back
  const { robot } = design.body
  const may = useMayDesign()
  /** By leg: place of the stage in the leg's list. */
  const [chosen, setChosen] = useState<{ readonly [leg: string]: number }>({})
  const shifts = useMemo(
    () =>
      report.legs.flatMap((leg) => {
        const stage = leg.stages[chosen[keyOf(leg)] ?? -1]
        return stage?.seconds == null ? [] : [{ leg: leg.leg, stage: stage.stage, seconds: stage.seconds }]
      }),
    [report, chosen],
  )
  const moved = useMemo(() => shifts.reduce(withShift, robot), [shifts, robot])
  const stageName = (leg: FieldLeg, stage: string | null): string => {
    if (stage === null) return texts.wholeLeg
    const { leg: of } = leg
    const trip = of.kind === 'collect' ? robot.collect[of.source] : robot.score[of.goal]?.[of.entry]
    const stages = trip && 'stages' in trip ? trip.stages : []
    return stages.find(({ id }) => id === stage)?.name ?? stage
  }
  return (
    <div className="sheet stack no-print">
      <h3>{texts.title}</h3>
      <p>{texts.intro}</p>
      {report.legs.length === 0 ? (
        <p>{texts.noLegs}</p>
      ) : (
        <>
          <div className="row field-choices">
            {report.legs.map((leg) => {
              const key = keyOf(leg)
              return (
                <NativeSelect
                  key={key}
                  label={texts.leg(legWords(page.game, robot, leg.leg), signedSeconds(leg.difference.mean))}
                  description={texts.trips(leg.trips, leg.runs)}
                  value={chosen[key] ?? none}
                  data={[
                    { value: none, label: texts.leave },
                    ...leg.stages.map(({ stage, seconds }, index) => ({
                      value: String(index),
                      label:
                        seconds === null
                          ? texts.canNot(stageName(leg, stage))
                          : texts.stage(stageName(leg, stage), signedSeconds(seconds)),
                      disabled: seconds === null,
                    })),
                  ]}
                  onChange={({ currentTarget: { value } }) => {
                    const { [key]: _, ...others } = chosen
                    setChosen(value === none ? others : { ...others, [key]: Number(value) })
                  }}
                />
              )
            })}
          </div>
          <BeforeAfter game={page.game} design={design.id} before={robot} after={shifts.length > 0 ? moved : null} />
          {may ? (
            <SaveCopy page={page} design={design} report={report} team={team} shifts={shifts} robot={moved} />
          ) : (
            <p className="soft">{texts.mayNot}</p>
          )}
        </>
      )}
    </div>
  )
}
