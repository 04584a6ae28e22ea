import type { Robot } from '../../../../src/model/documents/types.ts'
import type { Problem } from '../../../../src/model/errors.ts'
import { airFaults } from '../../../../src/model/timing/air/airFaults.ts'
import type { Remark } from '../../../../src/model/timing/types.ts'
import { pressure } from '../../../units/measures.ts'
import { sayQuantity } from '../../../units/write.ts'
import { words } from '../../../words/catalogue.ts'

export const sayPressure = (value: number): string => sayQuantity(value, pressure, undefined, 1)

/** Pressures of the stored air that contradict each other, in the reader's words and units; paths from the robot's root. */
export function airProblems({ air }: Robot): Problem[] {
  if (!air) return []
  const texts = words().air.problems
  return airFaults(air).map(({ path, rule, bound, got }) => ({
    path: ['air', ...path],
    message: texts[rule](sayPressure(bound), sayPressure(got)),
  }))
}

/** What can burst, for its field; it forbids nothing, because the answer says it too. */
export function airNotes({ air }: Robot): Problem[] {
  if (!air) return []
  const texts = words().air.why
  const most = air.tank.highestPressure
  const over = (value: number) => value > most
  return [
    ...(over(air.stored)
      ? [
          {
            path: ['air', 'stored'],
            message: texts.tankOverPressure({ most: sayPressure(most), stored: sayPressure(air.stored) }),
          },
        ]
      : []),
    ...(air.compressor && over(air.compressor.off)
      ? [
          {
            path: ['air', 'compressor', 'off'],
            message: texts.compressorOverPressure({ off: sayPressure(air.compressor.off), most: sayPressure(most) }),
          },
        ]
      : []),
  ]
}

/** A remark about stored air in the reader's words, all of whose numbers are pressures. */
export function airRemark({ code, message, values }: Remark): string {
  const texts: { readonly [code: string]: (of: never) => string } = words().air.why
  if (!Object.hasOwn(texts, code)) return message
  const told = Object.fromEntries(Object.entries(values).map(([name, value]) => [name, sayPressure(value)]))
  return texts[code]!(told as never)
}
