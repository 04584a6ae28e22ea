import fc from 'fast-check'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, onTestFinished, test } from 'vitest'
import type * as z from 'zod'
import * as contracts from '../../../src/api/contracts/timings/index.ts'
import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import { settle } from '../../../src/model/timing/answer/settle.ts'
import { mechanismAnswer } from '../../../src/model/timing/index.ts'
import { AirCurves } from '../../../web/charts/timing/AirCurves.tsx'
import { drawn } from '../../../web/charts/timing/drawings/drawn.tsx'
import { MechanismDrawing } from '../../../web/charts/timing/MechanismDrawing.tsx'
import { TimingCurves } from '../../../web/charts/timing/TimingCurves.tsx'
import { shownOf } from '../../../web/charts/timing/useShown.ts'
import { chooseUnits } from '../../../web/units/system.ts'
import { chooseLanguage } from '../../../web/words/catalogue.ts'
import * as given from '../../model/timing/inputs.ts'
import { numbersOf, stretched } from '../../model/timing/stretch.ts'

/** One element a line, so that a changed snapshot can be read. */
const markup = (element: React.ReactElement) => renderToStaticMarkup(element).replaceAll('><', '>\n<')

const mechanisms = given.examples.flatMap(([calculator, input], index) =>
  calculator === 'air' ? [] : [{ id: `m${index}`, name: `Example ${index}`, calculator, input } as Mechanism],
)

const pictureOf = (mechanism: Mechanism, share = 0.5, width = 640) =>
  drawn(shownOf(mechanism, mechanismAnswer(mechanism)), share, width)

const changed = (mechanism: Mechanism, input: object) =>
  ({ ...mechanism, input: { ...mechanism.input, ...input } }) as Mechanism

const of = (calculator: Mechanism['calculator'], index = 0) =>
  mechanisms.filter((each) => each.calculator === calculator)[index]!

describe('drawings', () => {
  test.each(mechanisms)('$calculator, $name, as it was reviewed', (mechanism) => {
    expect(markup(pictureOf(mechanism).picture)).toMatchSnapshot()
  })

  test.each(mechanisms)(
    '$calculator, $name: a name in words, its measures in a table, and its state at the moment',
    (mechanism) => {
      const text = markup(<MechanismDrawing mechanism={mechanism} answer={mechanismAnswer(mechanism)} />)
      const { sentences, measures, state } = pictureOf(mechanism)
      expect(text).toContain(`role="img" aria-label="${sentences.join(' ')}"`)
      expect(measures.length).toBeGreaterThan(4)
      for (const [name, value] of measures) expect(text).toContain(`${name}</th>\n<td class="figure">${value}</td>`)
      expect(state.length).toBeGreaterThan(1)
      expect(text).toContain(`: ${state.join(' · ')}`)
      expect(text).toContain('type="range"')
    },
  )

  test('a number that changes is seen at once: the distance, and the moment', () => {
    const longer = changed(of('drive'), { distance: 6 })
    expect(markup(pictureOf(longer).picture)).toContain('6\u00a0m')
    expect(markup(pictureOf(of('drive')).picture)).not.toContain('6\u00a0m<')
    const [early, late] = [0.2, 0.9].map((share) => markup(pictureOf(of('pivot'), share).picture))
    expect(early).not.toBe(late)
  })

  test('what can not be done is drawn without a slider and says so; it has no curves', () => {
    const impossible = [
      changed(of('rollers'), { grip: 1, drag: 2 }),
      changed(of('shot'), { angle: 0.2 }),
      changed(of('pivot', 1), { closedLength: 0.5 }),
      changed(of('wheel'), { target: 900 }),
      changed(of('cylinder'), { load: 5000 }),
      changed(of('drive'), { friction: 0.02, rollingResistance: 500 }),
    ]
    for (const mechanism of impossible) {
      const answer = mechanismAnswer(mechanism)
      expect(answer.possible, mechanism.calculator).toBe(false)
      const text = markup(<MechanismDrawing mechanism={mechanism} answer={answer} />)
      expect(text).toContain('nothing moves')
      expect(text).not.toContain('type="range"')
      expect(text).toMatch(/<svg[^>]*role="img"/)
      expect(markup(<TimingCurves mechanism={mechanism} answer={answer} />)).toBe('')
    }
    expect(pictureOf(impossible[2]!).sentences.join(' ')).toContain('too long')
  })

  test('a motion that could not be followed is drawn too', () => {
    const refused = { possible: false, refused: 'too quick to follow' } as const
    for (const mechanism of mechanisms)
      expect(markup(<MechanismDrawing mechanism={mechanism} answer={refused} />)).toContain('role="img"')
  })

  test('measures are in the reader’s units and language', async () => {
    const text = () => markup(<MechanismDrawing mechanism={of('drive')} answer={mechanismAnswer(of('drive'))} />)
    expect(text()).toContain('>5\u00a0m<')
    chooseUnits('inchPound')
    await chooseLanguage(['de'])
    onTestFinished(async () => {
      chooseUnits('metric')
      await chooseLanguage(['en'])
    })
    expect(text()).toContain('>197\u00a0in<')
    expect(text()).toContain('Zeichnung von Example 0')
  })

  test('an arm with less inertia than its mass at its centre of mass is told what the least is', () => {
    const light = changed(of('pivot'), { mass: 4, centre: 0.5, inertia: 0.5 })
    expect(pictureOf(light).sentences.join(' ')).toContain('at least 10000\u00a0kg·cm²')
    expect(pictureOf(of('pivot')).sentences.join(' ')).not.toContain('at least')
  })
})

describe('curves', () => {
  test.each(mechanisms.filter((_, index) => [0, 3, 6].includes(index)))(
    '$calculator, $name, as they were reviewed',
    (mechanism) => {
      const answer = mechanismAnswer(mechanism)
      expect(markup(<TimingCurves mechanism={mechanism} answer={answer} />)).toMatchSnapshot()
    },
  )

  test('the table has the curve’s own first and last values', () => {
    const answer = mechanismAnswer(of('drive'))
    if (!answer.possible) throw new Error('a drive that should do it')
    const text = markup(<TimingCurves mechanism={of('drive')} answer={answer} />)
    expect(text).toContain(`data-value="${answer.seconds}"`)
    expect(text).toContain('data-value="5"')
  })

  const air = {
    timeLeft: [150, 100, 50, 0],
    pressure: [900_000, 700_000, 550_000, 400_000],
    pressureAdiabatic: [900_000, 650_000, 450_000, 300_000],
    working: 501_325,
    lostAt: 34,
  }

  test('pressure through a match as it was reviewed: it stands where the working pressure is lost', () => {
    const text = markup(<AirCurves {...air} />)
    expect(text).toMatchSnapshot()
    expect(text).toContain('the working pressure is lost with 34.0\u00a0s left')
    expect(text).toContain('With 50.0\u00a0s left: 550\u00a0kPa(a), by the cautious bound 450\u00a0kPa(a)')
    const lasting = markup(<AirCurves {...air} lostAt={null} />)
    expect(lasting).toContain('the working pressure lasts')
    expect(lasting).not.toContain('lost with')
  })
})

const requests: { [Name in Mechanism['calculator']]: z.ZodType } = {
  drive: contracts.driveRequest,
  rollers: contracts.rollersRequest,
  pivot: contracts.pivotRequest,
  wheel: contracts.wheelRequest,
  shot: contracts.shotRequest,
  cylinder: contracts.cylinderRequest,
}

/** Where the shapes themselves stand, apart from paths. */
const places = (text: string, name: string) =>
  [...text.matchAll(new RegExp(` ${name}="([^"]*)"`, 'g'))].map(([, at]) => Number(at))

test.each(mechanisms)(
  'whatever its contract allows can be drawn inside of its picture: $calculator, $name',
  (mechanism) => {
    const likely = settle<object>(mechanism.input).likely
    const change = fc.tuple(
      fc.constantFrom(...numbersOf(likely)),
      fc.constantFrom(0, 0.001, 0.03, 0.3, 3, 30, 1000, -1),
    )
    const input = fc
      .array(change, { minLength: 1, maxLength: 4 })
      .map((changes) => requests[mechanism.calculator].safeParse(stretched(likely, changes)))
      .filter(({ success }) => success)
    fc.assert(
      fc.property(input, fc.constantFrom(290, 700), fc.constantFrom(0, 0.7, 1), ({ data }, width, share) => {
        const given = { ...mechanism, input: data } as Mechanism
        const answer = mechanismAnswer(given)
        const text = renderToStaticMarkup(drawn(shownOf(given, answer), share, width).picture)
        expect(text).not.toMatch(/NaN|Infinity|undefined/)
        const height = Number(/ height="([^"]*)"/.exec(text)![1])
        expect(height).toBeLessThan(640)
        for (const at of places(text, 'cx')) expect(at).toBeGreaterThanOrEqual(-1)
        for (const at of places(text, 'cx')) expect(at).toBeLessThanOrEqual(width + 1)
        for (const at of places(text, 'cy')) expect(at).toBeLessThanOrEqual(height + 1)
        const curves = renderToStaticMarkup(<TimingCurves mechanism={given} answer={answer} />)
        expect(curves).not.toMatch(/NaN|Infinity|undefined/)
      }),
      { numRuns: 25 },
    )
  },
)
