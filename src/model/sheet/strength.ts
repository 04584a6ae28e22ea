import type { QuickLeg, QuickWay, Strength, StrengthName } from '../documents/quickSheet.ts'

export const strengthNames: readonly StrengthName[] = ['weak', 'middling', 'strong']

/** What a sheet begins with: guesses of ours, to be changed on the sheet. */
export const strengthsAtFirst: { [name in StrengthName]: Strength } = {
  weak: { times: 1.4, success: 0.8 },
  middling: { times: 1, success: 1 },
  strong: { times: 0.75, success: 1.1 },
}

function stretched(leg: QuickLeg, factor: number): QuickLeg['time'] {
  const { time } = leg
  if (time.kind === 'fixed') return { kind: 'fixed', seconds: time.seconds * factor }
  return { kind: 'range', low: time.low * factor, likely: time.likely * factor, high: time.high * factor }
}

/** The way as a robot of that strength plays it: all times and all chances times its factors, chances up to 1. */
export function atStrength(way: QuickWay, { times, success }: Strength): QuickWay {
  const chance = (value: number) => Math.min(1, value * success)
  return {
    ...way,
    collect: { ...way.collect, time: stretched(way.collect, times) },
    score: { ...way.score, time: stretched(way.score, times), success: chance(way.score.success) },
    finishing: { ...way.finishing, time: stretched(way.finishing, times), success: chance(way.finishing.success) },
  }
}
