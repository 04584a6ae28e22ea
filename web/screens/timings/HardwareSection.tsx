import { Button } from '@mantine/core'
import type { ReactNode } from 'react'
import type { HardwareLink, Mechanism } from '../../../src/model/documents/mechanism.ts'
import type { Drive, Duration, Stage } from '../../../src/model/documents/types.ts'
import { mean } from '../../../src/model/duration/index.ts'
import { type Answers, mechanismAnswer, mechanismDrive, mechanismDuration } from '../../../src/model/timing/index.ts'
import type { Place } from '../../data/difference.ts'
import { valueAt } from '../../data/place.ts'
import { forgetTexts, useEdit } from '../../shell/fields/EditContext.tsx'
import { sayQuantity } from '../../units/write.ts'
import { words } from '../../words/catalogue.ts'
import { ChooseMechanism } from './ChooseMechanism.tsx'
import { following, isDriveAt, mechanismById } from './edits.ts'
import { hundredths } from './hundredths.ts'
import { whyNot } from './Results.tsx'
import { useTimings } from './TimingContext.ts'
import './timings.css'

/** On the form of a stage or of the drive: where its time comes from, and how hardware can tell it. `at`: in the robot. */
export default function HardwareSection(props: { at: Place }) {
  const { at } = props
  const { robot } = useTimings()
  const edit = useEdit()
  const texts = words().timings.section
  const of = valueAt(robot, at) as Stage | Drive | undefined
  if (!of) return null
  const mechanism = mechanismById(robot, of.hardware?.mechanism)
  const isDrive = isDriveAt(at)
  if (!mechanism && edit.readOnly) return null
  return (
    <fieldset className="stack hardware" data-testid="hardware">
      <legend>{texts.title}</legend>
      {of.hardware && mechanism ? (
        <Linked at={at} link={of.hardware} mechanism={mechanism}>
          {isDrive ? (
            <DriveLine mechanism={mechanism} follows={of.hardware.follows} />
          ) : (
            <StageLine duration={(of as Stage).duration} mechanism={mechanism} follows={of.hardware.follows} />
          )}
        </Linked>
      ) : (
        <ChooseMechanism at={at} name={isDrive ? null : (of as Stage).name} />
      )}
    </fieldset>
  )
}

function Linked(props: { at: Place; link: HardwareLink; mechanism: Mechanism; children: ReactNode }) {
  const { at, link, mechanism } = props
  const { robot, open, onOpen } = useTimings()
  const edit = useEdit()
  const texts = words().timings.section
  const isDrive = isDriveAt(at)
  const can = isDrive ? mechanismDrive(mechanism) !== null : mechanismDuration(mechanism) !== null
  const use = () => {
    // What was typed for the own time and is no value goes with it.
    const places = isDrive ? ['topSpeed', 'acceleration', 'deceleration'] : ['duration']
    for (const key of places) {
      edit.setText(['robot', ...at, key], null, null)
      forgetTexts(edit, ['robot', ...at, key])
    }
    edit.set(['robot'], following(robot, mechanism.id, at))
  }
  return (
    <>
      {props.children}
      <div className="row no-print">
        {!link.follows && can && !edit.readOnly && (
          <Button size="compact-md" variant="default" onClick={use}>
            {isDrive ? texts.useDrive : texts.use}
          </Button>
        )}
        <Button
          size="compact-md"
          variant="default"
          aria-expanded={open === mechanism.id}
          onClick={() => onOpen(open === mechanism.id ? null : mechanism.id)}
        >
          {open === mechanism.id ? texts.close : texts.open}
        </Button>
        {!edit.readOnly && (
          <Button
            size="compact-md"
            variant="subtle"
            onClick={() => {
              if (open === mechanism.id) onOpen(null)
              edit.set(['robot', ...at, 'hardware'], undefined)
            }}
          >
            {texts.unlink}
          </Button>
        )}
      </div>
      {link.follows && !edit.readOnly && (
        <p className="soft small no-print">{isDrive ? texts.ownDriveHow : texts.own}</p>
      )}
    </>
  )
}

/** Below this (s) two times are the same to whoever reads them. */
const alike = 0.005

function StageLine(props: { duration: Duration; mechanism: Mechanism; follows: boolean }) {
  const { duration, mechanism, follows } = props
  const texts = words().timings.section
  const answer = mechanismAnswer(mechanism)
  const gives = mechanismDuration(mechanism)
  if (follows && gives) return <p>{texts.follows(mechanism.name, hundredths(mean(gives)))}</p>
  if (follows) {
    return (
      <p className="loss" role="status">
        {texts.keeps(mechanism.name, hundredths(mean(duration)))} {!answer.possible && whyNot(mechanism, answer)}
      </p>
    )
  }
  const own = duration.kind === 'samples' ? texts.measured : texts.typed
  if (!Number.isFinite(mean(duration))) return null
  if (!gives) {
    return (
      <p>
        {own} {texts.givesNone(mechanism.name)}
      </p>
    )
  }
  const more = mean(duration) - mean(gives)
  const compared =
    Math.abs(more) < alike ? texts.alike : more > 0 ? texts.more(hundredths(more)) : texts.less(hundredths(-more))
  return (
    <p data-testid="hardware-difference">
      {own} {texts.gives(mechanism.name, hundredths(mean(gives)))} {compared}
    </p>
  )
}

type DriveNumbers = Pick<Drive, 'topSpeed' | 'acceleration' | 'deceleration'>

const driveWords = (of: DriveNumbers): string =>
  words().timings.section.numbers({
    top: sayQuantity(of.topSpeed, 'speed', undefined, 2),
    up: sayQuantity(of.acceleration, 'acceleration', undefined, 2),
    down: sayQuantity(of.deceleration, 'acceleration', undefined, 2),
  })

/** A drive's numbers are the likely ones: where the rest of what is known of it goes. */
function driveSpread({ spread, belief }: Answers['drive'] & { possible: true }): string {
  const texts = words().timings.section
  return [
    ...(spread ? [texts.driveVaries(hundredths(spread.p10), hundredths(spread.p90))] : []),
    ...(belief ? [texts.driveUnknown(hundredths(belief.low), hundredths(belief.high))] : []),
  ].join(' ')
}

function DriveLine(props: { mechanism: Mechanism; follows: boolean }) {
  const { mechanism, follows } = props
  const texts = words().timings.section
  const gives = mechanismDrive(mechanism)
  const answer = mechanismAnswer(mechanism) as Answers['drive']
  if (!gives) {
    return (
      <p className={follows ? 'loss' : undefined} role="status">
        {follows ? texts.keepsDrive(mechanism.name) : `${texts.ownDrive} ${texts.givesNone(mechanism.name)}`}{' '}
        {answer.possible ? words().timingInputs.legs.none : whyNot(mechanism, answer)}
      </p>
    )
  }
  const fitted = answer.possible ? answer.quantities.trapezoid : null
  return (
    <>
      <p>
        {follows
          ? texts.followsDrive(mechanism.name, driveWords(gives))
          : `${texts.ownDrive} ${texts.givesDrive(mechanism.name, driveWords(gives))}`}
      </p>
      {fitted && <p className="small">{texts.misfit(hundredths(fitted.rms), hundredths(fitted.worst))}</p>}
      {answer.possible && (answer.spread || answer.belief) && <p className="small">{driveSpread(answer)}</p>}
    </>
  )
}
