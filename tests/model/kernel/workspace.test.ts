import { readFile } from 'node:fs/promises'
import { expect, test } from 'vitest'
import { assembled } from '../../../scripts/kernel.js'
import { Workspace } from '../../../src/model/kernel/index.ts'

/** Numbers that look random and are the same in every run. */
function numbers(length: number, seed: number): Float64Array {
  let state = seed
  return Float64Array.from({ length }, () => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648
    return state / 2_147_483_648 - 0.3
  })
}

const spaces = () => ({ quick: new Workspace(), plain: new Workspace(false) })

test('the bytes are those of the page that they are made from', async () => {
  const bytes = await readFile(new URL('../../../src/model/kernel/kernelBytes.ts', import.meta.url), 'utf8')
  expect(bytes).toBe(await assembled())
})

test('this engine runs the quick loops, so that what follows compares two programs', () => {
  const { quick, plain } = spaces()
  expect(quick.kernel.correlate).not.toBe(plain.kernel.correlate)
  expect(quick.kernel.correlate.toString()).toContain('native code')
})

test.each([
  [1, 1, 1],
  [7, 3, 1],
  [8, 110, 1],
  [27, 40, -1],
  [64, 0, 1],
  [65, 9, -1],
])('correlating %i sums of %i products with step %i is the definition, to the last bit', (count, length, step) => {
  const filter = numbers(length, 3)
  const values = numbers(2 * length + count + 16, 5)
  const expected = Array.from({ length: count }, (_, j) => {
    let sum = 0
    for (let m = 0; m < length; m++) sum += (filter[m] as number) * (values[length + j + step * m] as number)
    return sum
  })
  for (const space of Object.values(spaces())) {
    const f = space.copied(filter)
    const v = space.copied(values)
    const out = space.take(count + 8)
    space.kernel.correlate(out, count, f, length, v + length, step)
    expect([...space.data.subarray(out, out + count)]).toEqual(expected)
  }
})

test('a sum over lags takes only those that reach back no further than told', () => {
  const weights = numbers(6, 11)
  const lags = Int32Array.of(3, 5, 8, 20, 21, 60)
  const values = numbers(120, 13)
  const count = 16
  const from = 10
  for (const space of Object.values(spaces())) {
    const w = space.copied(weights)
    const l = space.copiedWhole(lags)
    const v = space.copied(values)
    const out = space.copied(new Float64Array(count + 8).fill(1))
    space.kernel.addLagged(out, count, w, l, lags.length, v + 70, from)
    for (let j = 0; j < count; j++) {
      // By eights: the first eight see lags up to 17, the others up to 25.
      const most = from + 7 + 8 * Math.floor(j / 8)
      let sum = 1
      for (const [k, lag] of lags.entries())
        if (lag <= most) sum += (weights[k] as number) * (values[70 + j - lag] as number)
      expect(space.data[out + j]).toBe(sum)
    }
  }
})

test.each([0, 1, 2, 5, 8])('adding %i scaled numbers touches no other', (count) => {
  const values = numbers(12, 17)
  for (const space of Object.values(spaces())) {
    const v = space.copied(values)
    const out = space.copied(numbers(12, 19))
    space.kernel.addScaled(out + 1, v + 2, count, 0.75)
    const expected = numbers(12, 19).map((x, i) => (i >= 1 && i <= count ? x + 0.75 * (values[i + 1] as number) : x))
    expect([...space.data.subarray(out, out + 12)]).toEqual([...expected])
  }
})

test('a workspace that grows keeps what it holds, and lends again only zeros', () => {
  for (const space of Object.values(spaces())) {
    const first = space.copied(Float64Array.of(1, 2, 3))
    const filter = space.copied(Float64Array.of(2))
    const large = space.take(1_000_000)
    expect([...space.data.subarray(first, first + 3)]).toEqual([1, 2, 3])
    expect(space.data[large + 999_999]).toBe(0)
    space.kernel.correlate(large, 3, filter, 1, first, 1)
    expect([...space.data.subarray(large, large + 3)]).toEqual([2, 4, 6])
    space.giveBack()
    const again = space.take(1_000_000)
    expect(space.data.subarray(again, again + 1_000_000).every((x) => x === 0)).toBe(true)
  }
})

test('scattering adds a run at every lag, scaled, and touches no other', () => {
  const run = numbers(5, 23)
  const weights = numbers(3, 29)
  const lags = Int32Array.of(2, 4, 11)
  for (const space of Object.values(spaces())) {
    const values = space.copied(run)
    const w = space.copied(weights)
    const l = space.copiedWhole(lags)
    const out = space.copied(numbers(30, 31))
    space.kernel.scatter(out + 15, values, run.length, w, l, lags.length)
    const expected = numbers(30, 31)
    for (const [k, lag] of lags.entries())
      for (const [j, x] of run.entries()) expected[15 + j - lag] = expected[15 + j - lag]! + weights[k]! * x
    expect([...space.data.subarray(out, out + 30)]).toEqual([...expected])
  }
})

test('combining is base plus scaled values, and an offer is taken only where it is better by more than a tie', () => {
  const count = 16
  const base = numbers(count, 37)
  const values = numbers(count, 41)
  for (const space of Object.values(spaces())) {
    const b = space.copied(base)
    const v = space.copied(values)
    const out = space.take(count)
    space.kernel.combine(out, b, v, count, 0.25)
    expect([...space.data.subarray(out, out + count)]).toEqual([...base].map((x, j) => x + 0.25 * values[j]!))
    const choice = space.copied(new Float64Array(count).fill(-1))
    const best = space.copied(values)
    const offered = values.map((x, j) => x + [0.5, -0.5, 1e-13, 0][j % 4]!)
    space.kernel.offer(best, choice, space.copied(offered), count, 3, 1e-12)
    expect([...space.data.subarray(best, best + count)]).toEqual(
      [...values].map((x, j) => (j % 4 === 0 ? (offered[j] as number) : x)),
    )
    expect([...space.data.subarray(choice, choice + count)]).toEqual(
      Array.from({ length: count }, (_, j) => (j % 4 === 0 ? 3 : -1)),
    )
  }
})

test.each([
  [1, 1],
  [5, 3],
  [3, 40],
  [64, 105],
  [105, 64],
  [8, 8],
])('convolving %i with %i numbers is the definition', (length, reach) => {
  const filter = numbers(length, 43)
  const values = numbers(reach, 47)
  const expected = Array.from({ length: length + reach - 1 }, (_, j) => {
    let sum = 0
    for (let m = 0; m < length; m++) sum += (filter[m] as number) * (values[j - m] ?? 0)
    return sum
  })
  for (const space of Object.values(spaces())) {
    const f = space.copied(filter)
    const v = space.take(reach + 32) + 16
    space.data.set(values, v)
    const out = space.take(length + reach + 8)
    space.kernel.convolve(out, f, length, v, reach)
    for (const [j, sum] of expected.entries()) expect(space.data[out + j]).toBeCloseTo(sum, 14)
  }
})

test('rows are what the loops of one row make of each of them, and nothing between rows is touched', () => {
  const values = numbers(200, 41)
  const filter = numbers(12, 43)
  const weights = numbers(3, 47)
  const lags = Int32Array.of(9, 14, 30)
  for (const space of Object.values(spaces())) {
    const { kernel } = space
    const v = space.copied(values)
    const f = space.copied(filter)
    const w = space.copied(weights)
    const l = space.copiedWhole(lags)
    const many = space.copied(numbers(60, 53))
    const one = space.copied(numbers(60, 53))
    const spare = space.take(16)
    const both = () => [many, one].map((place) => [...space.data.subarray(place, place + 60)])

    kernel.followRows(many, 20, f, 12, v + 40, 50, 3, w, l, 3, 15, 7)
    for (let k = 0; k < 3; k++) {
      kernel.correlate(one + 20 * k, 8, f, 12, v + 40 + 50 * k, 1)
      kernel.addLagged(one + 20 * k, 8, w, l, 3, v + 55 + 50 * k, 7)
    }
    expect(both()[0]).toEqual(both()[1])
    kernel.combineRows(many + 8, 20, v + 3, 0, v + 60, 30, 2, 0.5)
    for (let k = 0; k < 2; k++) kernel.combine(one + 8 + 20 * k, v + 3, v + 60 + 30 * k, 8, 0.5)
    expect(both()[0]).toEqual(both()[1])
    kernel.offerRows(many, 20, spare, v + 100, 0, 3, 0.1)
    for (let k = 0; k < 3; k++) kernel.offer(one + 20 * k, spare + 8, v + 100, 8, 0, 0.1)
    expect(both()[0]).toEqual(both()[1])
    expect(both()[0]).not.toEqual([...numbers(60, 53)])
  }
})

test.each([1, 2, 5, 24])(
  'the best of %i times begins as nothing, takes what is better by more than a tie, and is kept short',
  (count) => {
    const before = numbers(count, 59)
    const worth = before.map((x, j) => x + [0.5, -0.5, 1e-13][j % 3]!)
    for (const space of Object.values(spaces())) {
      const { kernel } = space
      const best = space.copied(numbers(count + 2, 61))
      const choice = space.copied(numbers(count + 2, 61))
      kernel.none(best, choice, count, -1)
      const part = (place: number) => [...space.data.subarray(place, place + count)]
      expect(part(best)).toEqual(new Array(count).fill(0))
      expect(part(choice)).toEqual(new Array(count).fill(-1))

      space.data.set(before, best)
      const actions = space.copied(Float64Array.from({ length: count }, (_, j) => j - 2))
      kernel.offerEach(best, choice, space.copied(worth), actions, count, 1e-12)
      expect(part(best)).toEqual([...before].map((x, j) => (j % 3 === 0 ? worth[j] : x)))
      const chosen = Array.from({ length: count }, (_, j) => (j % 3 === 0 ? j - 2 : -1))
      expect(part(choice)).toEqual(chosen)

      const width = count + 3
      const short = 4 * space.take(width) + 1
      const all = () => [...space.short.subarray(short - 1, short + 3 * width)]
      const untouched = new Array(4).fill(0)
      kernel.shorten(short, choice, count)
      expect(all().slice(0, count + 4)).toEqual([0, ...chosen, 0, 0, 0])
      kernel.copyShorts(short + width, width, 2, short, count)
      expect(all()).toEqual([0, ...chosen, 0, 0, 0, ...chosen, 0, 0, 0, ...chosen, ...untouched.slice(1)])
    }
  },
)
