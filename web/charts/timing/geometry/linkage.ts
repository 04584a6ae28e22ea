import type { CylinderPivotInput } from '../../../../src/model/timing/index.ts'
import { type Point, polar } from './swing.ts'

/** A cylinder between the frame and an arm, at one angle of the arm. Points are from the pivot, forward and up (m). */
export interface Linkage {
  /** Where the fixed end is hinged, and where the rod is. */
  frame: Point
  hinge: Point
  /** From hinge to hinge. */
  length: number
  /** Where the tube ends and the rod comes out. */
  tubeEnd: Point
  /** Whether the cylinder has this length. */
  fits: 'yes' | 'tooShort' | 'tooLong'
}

/** Of the length with the rod drawn in, how much is tube; the rest is the rod's end that always sticks out. */
const tubeShare = 0.86

export function linkageAt(input: CylinderPivotInput<number>, angle: number): Linkage {
  const { frame, radius, offset, closedLength, cylinder } = input
  const hinge = polar(radius, angle + offset)
  const [across, up] = [hinge[0] - frame[0], hinge[1] - frame[1]]
  const length = Math.hypot(across, up)
  // A tube can not reach beyond its rod's hinge; where it would, the cylinder does not fit anyway.
  const tube = length > 0 ? Math.min(1, (tubeShare * closedLength) / length) : 0
  const open = closedLength + cylinder.stroke
  return {
    frame,
    hinge,
    length,
    tubeEnd: [frame[0] + tube * across, frame[1] + tube * up],
    fits: length > open + 1e-9 ? 'tooShort' : length < closedLength - 1e-9 ? 'tooLong' : 'yes',
  }
}
