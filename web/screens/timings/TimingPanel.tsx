import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { mechanismAnswer } from '../../../src/model/timing/index.ts'
import { MechanismDrawing } from '../../charts/timing/MechanismDrawing.tsx'
import { TimingCurves } from '../../charts/timing/TimingCurves.tsx'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { type CautionId, Cautions } from '../../shell/Cautions.tsx'
import { TextField } from '../../shell/fields/TextField.tsx'
import { words } from '../../words/catalogue.ts'
import { DesignSearch } from './DesignSearch.tsx'
import { explainTiming } from './explainTiming.ts'
import { kindOf, type MechanismKind } from './inputs.ts'
import { MechanismForm } from './MechanismForm.tsx'
import { Quantities, Sensitivities, SpreadLines, TimeLine, Warnings } from './Results.tsx'

/** How each kind of mechanism hurts people. */
export const cautionsOf: { readonly [Kind in MechanismKind]: CautionId[] } = {
  drive: ['spinning', 'energy', 'lifted'],
  rollers: ['spinning', 'energy'],
  motorArm: ['energy', 'lifted'],
  cylinderArm: ['air', 'energy', 'lifted'],
  spinUp: ['spinning', 'energy'],
  recovery: ['spinning', 'energy'],
  shot: ['spinning', 'energy'],
  cylinder: ['air', 'energy'],
}

/** A mechanism of the robot: its drawing first, then its numbers, what they give, and its cautions. */
export function TimingPanel(props: {
  mechanism: Mechanism
  index: number
  game: Game
  option: Option
  /** Which revision the numbers are of. */
  source: string
  /** Address of the design's stopwatch. */
  stopwatch: string
}) {
  const { mechanism, index, game, option, source, stopwatch } = props
  const texts = words().timings.panel
  const answer = mechanismAnswer(mechanism)
  const place = ['robot', 'mechanisms', index]
  return (
    <>
      <MechanismDrawing mechanism={mechanism} answer={answer} />
      <TimeLine {...{ mechanism, answer }} />
      <SpreadLines answer={answer} />
      {answer.possible && (
        <p className="no-print">
          <CameAbout explain={() => explainTiming(mechanism, answer, { source, stopwatch })}>
            {words().explain.opened}
          </CameAbout>
        </p>
      )}
      <section className="stack" aria-label={texts.form}>
        <div className="form-grid">
          <TextField place={[...place, 'name']} label={texts.name} required />
        </div>
        <MechanismForm {...{ mechanism, place, game, option }} />
      </section>
      <TimingCurves mechanism={mechanism} answer={answer} />
      <Warnings answer={answer} />
      <Quantities {...{ mechanism, answer, source }} />
      <Sensitivities {...{ mechanism, answer }} />
      <DesignSearch {...props} />
      <Cautions which={cautionsOf[kindOf(mechanism)]} of={mechanism.name} />
    </>
  )
}
