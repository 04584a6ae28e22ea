import type { Problem } from '../errors.ts'
import { problem } from './sentences.ts'
import type { Duration } from './types.ts'

const path = ['drive', 'pace']

function below(value: number, field: readonly (string | number)[]): Problem[] {
  if (value >= 1) return []
  return [problem([...path, ...field], 'slowPace', { value })]
}

/** A pace can not go below 1: the time without it is already the fastest that the drive can do. */
export function checkPace(pace: Duration): Problem[] {
  switch (pace.kind) {
    case 'fixed':
      return below(pace.seconds, ['seconds'])
    case 'range':
      return below(pace.low, ['low'])
    case 'samples': {
      const index = pace.seconds.findIndex((value) => value < 1)
      return index < 0 ? [] : below(pace.seconds[index]!, ['seconds', index])
    }
    case 'lognormal': {
      if (pace.spread === 1) return below(pace.median, ['median'])
      return [problem([...path, 'kind'], 'openPace', {})]
    }
  }
}
