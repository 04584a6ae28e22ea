import { pixel } from '../../scale.ts'
import type { View } from '../geometry/fit.ts'
import type { Point } from '../geometry/swing.ts'

/** A line through points of the world. */
export const polyline = (points: readonly Point[], view: Pick<View, 'x' | 'y'>): string =>
  `M${points.map(([x, y]) => `${pixel(view.x(x))} ${pixel(view.y(y))}`).join('L')}`
