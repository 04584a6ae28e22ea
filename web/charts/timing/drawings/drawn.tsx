import type { ReactElement } from 'react'
import { momentAt } from '../moment.ts'
import { tellCylinder } from '../told/cylinder.ts'
import { tellDrive } from '../told/drive.ts'
import { tellPivot } from '../told/pivot.ts'
import { tellRollers } from '../told/rollers.ts'
import { tellShot } from '../told/shot.ts'
import type { Measures, Told } from '../told/told.ts'
import { tellWheel } from '../told/wheel.ts'
import type { Shown } from '../useShown.ts'
import { CylinderDrawing } from './CylinderDrawing.tsx'
import { DriveDrawing } from './DriveDrawing.tsx'
import { PivotDrawing } from './PivotDrawing.tsx'
import type { Drawn } from './props.ts'
import { RollersDrawing } from './RollersDrawing.tsx'
import { ShotDrawing } from './ShotDrawing.tsx'
import { WheelDrawing } from './WheelDrawing.tsx'

/** A drawing at a moment, with what is said about it. */
export interface DrawnMoment {
  picture: ReactElement
  sentences: string[]
  measures: Measures
  /** How it stands at the moment; empty where nothing moves. */
  state: string[]
}

type Motion<Curves> = Drawn<'drive', object, Curves>['motion']

const motionOf = <C extends { time: number[] }>(curves: C | null, share: number): Motion<C> =>
  curves && { curves, at: momentAt(curves.time, share) }

function put<C>(told: Told<C>, motion: Motion<C>, picture: (label: string) => ReactElement): DrawnMoment {
  return {
    picture: picture(told.sentences.join(' ')),
    sentences: told.sentences,
    measures: told.measures,
    state: motion ? told.state(motion.curves, motion.at) : [],
  }
}

/** Every calculator's own drawing of its mechanism. */
export function drawn(shown: Shown, share: number, width: number): DrawnMoment {
  switch (shown.calculator) {
    case 'drive': {
      const { input, quantities } = shown
      const motion = motionOf(shown.curves, share)
      return put(tellDrive(input, quantities, width), motion, (label) => (
        <DriveDrawing {...{ input, quantities, motion, width, label }} />
      ))
    }
    case 'rollers': {
      const { input, quantities } = shown
      const motion = motionOf(shown.curves, share)
      return put(tellRollers(input, quantities), motion, (label) => (
        <RollersDrawing {...{ input, quantities, motion, width, label }} />
      ))
    }
    case 'pivot': {
      const { input, quantities } = shown
      const motion = motionOf(shown.curves, share)
      const angle = motion?.at.of(motion.curves.angle) ?? input.from
      return put(tellPivot(input, quantities, angle), motion, (label) => (
        <PivotDrawing {...{ input, quantities, motion, width, label }} />
      ))
    }
    case 'wheel': {
      const { input, quantities } = shown
      const motion = motionOf(shown.curves, share)
      return put(tellWheel(input, quantities), motion, (label) => (
        <WheelDrawing {...{ input, quantities, motion, width, label }} />
      ))
    }
    case 'shot': {
      const { input, quantities } = shown
      const motion = motionOf(shown.curves, share)
      return put(tellShot(input, quantities), motion, (label) => (
        <ShotDrawing {...{ input, quantities, motion, width, label }} />
      ))
    }
    case 'cylinder': {
      const { input, quantities } = shown
      const motion = motionOf(shown.curves, share)
      return put(tellCylinder(input, quantities, width), motion, (label) => (
        <CylinderDrawing {...{ input, quantities, motion, width, label }} />
      ))
    }
  }
}
