import type { StoredAir } from '../../../../src/model/documents/air.ts'
import type { AirPlan } from '../../../../src/model/timing/air/airPlan.ts'
import { volume } from '../../../units/measures.ts'
import { sayQuantity } from '../../../units/write.ts'
import { words } from '../../../words/catalogue.ts'
import type { Explanation } from '../../../words/explain.ts'
import { plain, points, signedPoints } from '../../../words/format.ts'
import { sayPressure } from './airProblems.ts'
import { cautiousWords, lostWords } from './airWords.ts'

/** How the points with stored air came about: those of the plan, less what its loss costs, and the numbers of the supply. */
export function explainAir(
  answer: AirPlan & { possible: true },
  air: StoredAir,
  { teleop, source }: { teleop: number; source: string },
): Explanation {
  const texts = words().air.explain
  const { always, withThis } = answer.points
  const { compressor } = air
  return {
    title: texts.title,
    result: `${lostWords(answer.lostAt, teleop)}${cautiousWords(answer, teleop)}`,
    formula: texts.formula,
    parts: [
      { label: texts.always, value: points(always) },
      { label: texts.less, value: signedPoints(withThis - always) },
    ],
    total: { label: texts.total, value: points(withThis) },
    inputs: [
      {
        label: texts.supply,
        value: texts.supplyOf(
          plain(air.tanks),
          sayQuantity(air.tank.volume, volume, undefined, 2),
          sayPressure(air.stored),
        ),
      },
      { label: texts.working, value: [air.working, air.low].map(sayPressure).join(', ') },
      {
        label: texts.compressor,
        value: compressor
          ? texts.compressorOf(sayPressure(compressor.on), sayPressure(compressor.off))
          : texts.noCompressor,
      },
    ],
    source,
  }
}
