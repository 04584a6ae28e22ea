import { describe, expect, test } from 'vitest'
import { numberAt, settle, withNumbers } from '../../../src/model/timing/answer/settle.ts'
import { cylinder } from '../../../src/model/timing/cylinder/cylinder.ts'
import { drive } from '../../../src/model/timing/drive/drive.ts'
import { type CalculatorName, type Sensitivity, timing } from '../../../src/model/timing/index.ts'
import { pivot } from '../../../src/model/timing/pivot/pivot.ts'
import { rollers } from '../../../src/model/timing/rollers/rollers.ts'
import { shot } from '../../../src/model/timing/shot/shot.ts'
import { wheel } from '../../../src/model/timing/wheel/wheel.ts'
import { examples } from './inputs.ts'
import { numbersOf } from './stretch.ts'

type Seconds = (settled: never) => number | null
const secondsOf: { readonly [Name in Exclude<CalculatorName, 'air'>]: Seconds } = {
  drive: drive.seconds,
  rollers: rollers.seconds,
  pivot: pivot.seconds,
  wheel: wheel.seconds,
  shot: shot.seconds,
  cylinder: cylinder.seconds,
}

/** Counts are whole, and a motor's nominal voltage says at what its other numbers hold: a little more of them means nothing. */
const noLittleMore = /^motors$|^cylinders$|nominalVoltage$/

const timed = examples.flatMap(([name, input], index) => (name === 'air' ? [] : [{ name, input, index }]))

describe('Every number of the input that changes the time has its sensitivity told, and it is the difference that a small step makes:', () => {
  test.each(timed)('$name, example $index', ({ name, input }) => {
    const { likely, places } = settle<object>(input)
    const seconds = (path: (string | number)[], value: number) =>
      secondsOf[name](withNumbers(likely, [[path, value]]) as never)
    const told = (timing(name, likely as never) as { sensitivity: Sensitivity[] }).sensitivity
    const spread = (timing(name, input as never) as { sensitivity: Sensitivity[] }).sensitivity
    // What is uncertain says besides what its ends do.
    for (const { path } of places) expect(spread.find((each) => each.input === path.join('.'))?.swing).toHaveLength(2)
    let checked = 0
    for (const dotted of numbersOf(likely).map((keys) => keys.join('.'))) {
      if (noLittleMore.test(dotted)) continue
      const path = dotted.split('.').map((key) => (/^\d+$/.test(key) ? Number(key) : key))
      const value = numberAt(likely, path)!
      const step = value === 0 ? 1e-4 : Math.abs(value) * 5e-4
      const [more, less] = [seconds(path, value + step), seconds(path, value - step)]
      const slope = more === null || less === null ? 0 : (more - less) / (2 * step)
      const found = told.find((each) => each.input === dotted)
      if (Math.abs(slope * value) < 1e-5) continue
      checked++
      expect([dotted, found !== undefined]).toEqual([dotted, true])
      // A step up of a thousandth against one of half of it both ways: where the time bends, as next to the highest speed of a wheel, they differ by up to a tenth.
      expect(Math.abs(found!.secondsPerUnit / slope - 1), dotted).toBeLessThan(0.1)
    }
    expect(checked).toBeGreaterThan(5)
  })
})
