import type { ReactNode } from 'react'
import { percent, points, seconds, signedPoints } from '../words/format.ts'
import type { ValueCell } from './cell.ts'

export const pointsCell = (value: number, shown: ReactNode = points(value)): ValueCell => ({ shown, value })

export const signedCell = (value: number, shown: ReactNode = signedPoints(value)): ValueCell => ({ shown, value })

export const secondsCell = (value: number, shown: ReactNode = seconds(value)): ValueCell => ({
  shown,
  value,
  unit: 's',
})

/** A share of one, in per cent as it is shown. */
export const percentCell = (share: number, shown: ReactNode = percent(share)): ValueCell => ({
  shown,
  value: share * 100,
  unit: '%',
})
