import type { StripLayout } from '../../charts/stripLayout.ts'
import { words } from '../../words/catalogue.ts'
import { points, seconds, signedPoints } from '../../words/format.ts'
import { isNothing } from '../../words/verdict.ts'

type Section = Pick<StripLayout['sections'][number], 'name' | 'mean'>

/** 0.1 s is what is shown; less than half of it is the same. */
const same = 0.05

export function secondsApart(mine: number, its: number): string {
  const texts = words().strip.beside
  const by = its - mine
  if (Math.abs(by) < same) return texts.same
  return by > 0 ? texts.more(seconds(by)) : texts.less(seconds(-by))
}

const sum = (sections: readonly Section[]) => sections.reduce((total, { mean }) => total + mean, 0)

/** How long both take on average, and in which leg the difference lies. Sections stand in the same order in both. */
export function timeWords(
  mine: { name: string; sections: readonly Section[] },
  other: { name: string; sections: readonly Section[] },
): string[] {
  const texts = words().strip.beside
  const [my, its] = [sum(mine.sections), sum(other.sections)]
  const whole = texts.whole({
    mine: mine.name,
    my: seconds(my),
    other: other.name,
    its: seconds(its),
    difference: secondsApart(my, its),
  })
  if (mine.sections.length < 2 || mine.sections.length !== other.sections.length) return [whole]
  const legs = mine.sections.map((section, index) =>
    texts.leg(section.name, secondsApart(section.mean, other.sections[index]!.mean)),
  )
  return [whole, texts.where(legs.join('; '))]
}

export function pointsWords(mine: { name: string; points: number }, other: { name: string; points: number }): string {
  const texts = words().strip.beside
  const by = other.points - mine.points
  if (isNothing(by)) return texts.equal(points(mine.points))
  return texts.points({
    mine: mine.name,
    my: points(mine.points),
    other: other.name,
    its: points(other.points),
    difference: signedPoints(by),
  })
}
