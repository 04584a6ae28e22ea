import type { PivotInput } from '../../../../src/model/timing/index.ts'
import { around, type Bounds } from './fit.ts'

export type Point = readonly [x: number, y: number]

/** A point at a distance from the pivot, at an angle above level (rad). */
export const polar = (radius: number, angle: number): Point => [radius * Math.cos(angle), radius * Math.sin(angle)]

export interface ArmShape {
  /** As long as the arm is drawn (m): it reaches beyond its centre of mass and its radius of gyration. */
  length: number
  centre: number
  /** Where all of its mass would have to sit for its inertia: √(inertia / mass) (m). */
  gyration: number
  /** No body has less inertia about the pivot than mass · centre²; here it would. */
  impossibleInertia: boolean
}

export function armShape({ inertia, mass, centre }: PivotInput<number>): ArmShape {
  const gyration = Math.sqrt(inertia / mass)
  return {
    length: 1.3 * Math.max(centre, gyration),
    centre,
    gyration,
    impossibleInertia: gyration < centre * (1 - 1e-9),
  }
}

/** Points along an arc about the pivot; beyond a whole turn it winds outwards, so that turns can be told apart. */
export function arc(radius: number, from: number, to: number): Point[] {
  const turned = Math.abs(to - from)
  const steps = Math.max(2, Math.ceil(turned / 0.08))
  return Array.from({ length: steps + 1 }, (_, i) => {
    const share = i / steps
    const out = 1 + (0.12 * Math.max(0, share * turned - 2 * Math.PI)) / (2 * Math.PI)
    return polar(radius * out, from + (to - from) * share)
  })
}

/** What the arm sweeps, its pivot included. */
export function swept(length: number, from: number, to: number): Bounds {
  return around([[0, 0], ...arc(length, from, to)])
}
