import type { Option } from '../../../src/model/documents/types.ts'
import { drawCount } from '../../../src/model/leg/sampled.ts'
import type { StripBar, StripSection } from '../../charts/stripLayout.ts'
import { words } from '../../words/catalogue.ts'
import type { Explanation } from '../../words/explain.ts'
import { percent, plain, points, seconds, signedPoints } from '../../words/format.ts'
import { secondsApart } from './besideWords.ts'

/** Why a leg takes longer on average than its bars. */
export function explainWaiting(section: StripSection, source: string): Explanation {
  const text = words().explainDesigns.waiting
  const { name, start, finish, mean, p10, p90, waiting } = section
  return {
    title: text.title(name),
    result: text.result(seconds(waiting)),
    formula: text.formula,
    parts: [
      { label: text.mean, value: seconds(mean) },
      { label: text.bars, value: seconds(finish - start) },
    ],
    total: { label: text.total, value: seconds(waiting) },
    inputs: [{ label: text.tenths, value: text.between(seconds(p10), seconds(p90)) }],
    source,
  }
}

/** By how much a stage may end later without delaying its leg; its times count from the strip's start. */
export function explainFloat(bar: StripBar, source: string): Explanation {
  const text = words().explainDesigns.float
  const float = seconds(bar.floatUntil - bar.finish)
  return {
    title: text.title(bar.name),
    result: text.result(float),
    formula: text.formula,
    parts: [
      { label: text.latest, value: seconds(bar.floatUntil) },
      { label: text.earliest, value: seconds(bar.finish) },
    ],
    total: { label: text.total, value: float },
    inputs: [
      { label: text.begins, value: seconds(bar.start) },
      { label: text.takes, value: seconds(bar.mean) },
    ],
    source,
  }
}

/** How often a stage lies on the longest path of its leg, beside the other stages of that leg. */
export function explainCritical(bar: StripBar, bars: readonly StripBar[], source: string): Explanation {
  const text = words().explainDesigns.critical
  return {
    title: text.title(bar.name),
    result: text.result(percent(bar.criticality)),
    formula: text.formula(plain(drawCount)),
    parts: bars
      .filter(({ leg }) => leg === bar.leg)
      .map(({ name, criticality, mean }) => ({
        label: name,
        value: percent(criticality),
        note: text.takes(seconds(mean)),
      })),
    inputs: [],
    source,
  }
}

/** The same trip by two robots, leg by leg. */
export function explainBesideTime(
  mine: { name: string; sections: readonly StripSection[] },
  other: { name: string; sections: readonly StripSection[] },
  source: string,
): Explanation {
  const text = words().explainDesigns.besideTime
  const sum = (sections: readonly StripSection[]) => sections.reduce((total, { mean }) => total + mean, 0)
  const [my, its] = [sum(mine.sections), sum(other.sections)]
  return {
    title: text.title(mine.name, other.name),
    result: secondsApart(my, its),
    formula: text.formula,
    parts: mine.sections.flatMap((section, index) => {
      const beside = other.sections[index]
      if (!beside) return []
      return [
        {
          label: section.name,
          value: secondsApart(section.mean, beside.mean),
          note: text.both(mine.name, seconds(section.mean), other.name, seconds(beside.mean)),
        },
      ]
    }),
    total: { label: text.total, value: secondsApart(my, its) },
    inputs: [],
    source,
  }
}

/** The expected points of two designs. */
export function explainBesidePoints(
  mine: { option: Option; points: number },
  other: { option: Option; points: number },
  source: string,
): Explanation {
  const text = words().explainDesigns.besidePoints
  const [my, its] = [mine.option.robot.name, other.option.robot.name]
  const difference = signedPoints(other.points - mine.points)
  return {
    title: text.title(my, its),
    result: difference,
    formula: text.formula,
    parts: [
      { label: its, value: points(other.points) },
      { label: text.less(my), value: points(mine.points) },
    ],
    total: { label: text.total, value: difference },
    inputs: [
      { label: text.this, value: mine.option.name },
      { label: text.other, value: other.option.name },
    ],
    source,
  }
}
