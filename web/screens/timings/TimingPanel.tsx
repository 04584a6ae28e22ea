import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { mechanismAnswer } from '../../../src/model/timing/index.ts'
import { MechanismDrawing } from '../../charts/timing/MechanismDrawing.tsx'
import { TimingCurves } from '../../charts/timing/TimingCurves.tsx'
import { DesignSearch } from './DesignSearch.tsx'

/** A mechanism of the robot: its drawing first, then its numbers, what they give, and its cautions. */
export function TimingPanel(props: { mechanism: Mechanism; index: number; game: Game; option: Option }) {
  const { mechanism } = props
  const answer = mechanismAnswer(mechanism)
  return (
    <>
      <MechanismDrawing mechanism={mechanism} answer={answer} />
      <TimingCurves mechanism={mechanism} answer={answer} />
      <DesignSearch {...props} />
    </>
  )
}
