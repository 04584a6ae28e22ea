import type { FieldReport, Known } from '../../../../src/model/scouting/field/types.ts'
import { words } from '../../../words/catalogue.ts'
import { plain, points, seconds, signedPoints } from '../../../words/format.ts'

type Whole = NonNullable<FieldReport['whole']>

/** Seconds with their sign: '+2.1 s'. */
export const signedSeconds = (value: number): string => words().fieldCheck.signedSeconds(signedPoints(value))

/** '12.1 s [11.2, 13.0]'; without an interval the mean alone. */
export const within = ({ mean, interval95 }: Known): string =>
  interval95 ? words().fieldCheck.interval(seconds(mean), points(interval95[0]), points(interval95[1])) : seconds(mean)

/** Whether the difference is more than chance would bring. */
export const isDifferent = ({ difference: { interval95 } }: Pick<Whole, 'difference'>): boolean =>
  interval95 !== null && interval95[0] * interval95[1] > 0

/** How many times the time a factor stands for, as a change in per cent: −7 %, +12 %. */
export const asChange = (factor: number): string => {
  const percent = Math.round(100 * (factor - 1))
  return words().fieldCheck.change(percent > 0 ? `+${percent}` : plain(percent, 0))
}

/** 'The model says …, the field says …', whether that is more than chance, and where it comes from. */
export function sentences(report: FieldReport, whole: Whole): { answer: string; further: string[] } {
  const texts = words().fieldCheck
  const { model, field, difference, runs, trips } = whole
  const [said, seen] = [seconds(model.mean), seconds(field.mean)]
  const answer = field.interval95
    ? texts.saysWithin(said, seen, ...(field.interval95.map(seconds) as [string, string]))
    : texts.says(said, seen)
  const [low, high] = difference.interval95 ?? []
  const sure =
    low === undefined || high === undefined
      ? texts.oneRun
      : isDifferent(whole)
        ? difference.mean > 0
          ? texts.longer(seconds(difference.mean), seconds(low), seconds(high))
          : texts.shorter(seconds(-difference.mean), seconds(-high), seconds(-low))
        : texts.maybeChance(signedSeconds(difference.mean), signedSeconds(low), signedSeconds(high))
  return { answer, further: [sure, ...splitWords(report), texts.from(trips, runs)] }
}

/** Which half of the trip the difference is in. */
function splitWords({ parts, whole }: FieldReport): string[] {
  if (!parts || !whole) return []
  const texts = words().fieldCheck
  const { collecting, scoring, difference } = parts
  const some = parts.trips < whole.trips ? [texts.ofTimed(parts.trips)] : []
  if (Math.abs(difference) < 0.05) return []
  // One direction: a share of the whole can be told.
  if (collecting * scoring >= 0) {
    const [half, value] =
      Math.abs(collecting) >= Math.abs(scoring)
        ? [texts.halves.collecting, collecting]
        : [texts.halves.scoring, scoring]
    return [texts.mostIn(seconds(Math.abs(value)), seconds(Math.abs(difference)), half), ...some]
  }
  return [texts.bothWays(signedSeconds(collecting), signedSeconds(scoring)), ...some]
}

/** What was left out, and what to know about the rest. */
export function remarks(report: FieldReport, changes = 0): string[] {
  const texts = words().fieldCheck
  const { leftOut, cutOff, sourceUnknown, defended, whole } = report
  return [
    ...(changes > 0 ? [texts.changed(changes)] : []),
    ...(cutOff > 0 ? [texts.cutOff(cutOff)] : []),
    ...(whole && whole.beyond > 0.05 ? [texts.beyond] : []),
    ...leftOut.map(({ reason, trips }) => texts.leftOut[reason](trips)),
    ...(sourceUnknown > 0 ? [texts.sourceUnknown(sourceUnknown)] : []),
    ...(defended > 0 ? [texts.defended(defended)] : []),
  ]
}
