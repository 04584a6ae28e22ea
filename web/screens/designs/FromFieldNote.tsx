import { Link } from 'wouter'
import type { FromField } from '../../../src/model/documents/records.ts'
import type { Game, Robot } from '../../../src/model/documents/types.ts'
import { useList } from '../../data/documents.ts'
import { words } from '../../words/catalogue.ts'
import { signedSeconds } from '../event/field/said.ts'
import { legWords } from './air/legWords.ts'

/** Where the numbers of a copy come from that was written back from the field. */
export function FromFieldNote(props: { of: FromField; game: Game; robot: Robot }) {
  const { of, game, robot } = props
  const texts = words().fieldCheck
  const [designs, events] = [useList('design'), useList('event')]
  const nameIn = (list: typeof designs, id: string) => list.data?.find((each) => each.id === id)?.name ?? id
  const stageName = ({ leg, stage }: FromField['shifts'][number]): string => {
    if (stage === null) return texts.back.wholeLeg
    const trip =
      leg.kind === 'collect'
        ? robot.collect[leg.source]
        : leg.kind === 'score'
          ? robot.score[leg.goal]?.[leg.entry]
          : undefined
    return (trip && 'stages' in trip && trip.stages.find(({ id }) => id === stage)?.name) || stage
  }
  return (
    <div className="sheet">
      <p>
        {texts.noteOf} <Link href={`/designs/${of.design.id}`}>{nameIn(designs, of.design.id)}</Link>.{' '}
        {texts.note(of.team, nameIn(events, of.event), of.matches, of.practice, of.trips)}
      </p>
      <ul>
        {of.shifts.map((shift) => (
          <li key={JSON.stringify([shift.leg, shift.stage])}>
            {texts.noteShift(legWords(game, robot, shift.leg), stageName(shift), signedSeconds(shift.seconds))}
          </li>
        ))}
      </ul>
    </div>
  )
}
