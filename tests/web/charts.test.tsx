import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, onTestFinished, test } from 'vitest'
import { BreakEvenLines } from '../../web/charts/BreakEvenLines.tsx'
import { CycleStrip } from '../../web/charts/CycleStrip.tsx'
import { DifferenceDots } from '../../web/charts/DifferenceDots.tsx'
import { belowWords, DotPlot } from '../../web/charts/DotPlot.tsx'
import { DataTable } from '../../web/charts/Figure.tsx'
import { PolicyStrip } from '../../web/charts/PolicyStrip.tsx'
import { SwingChart } from '../../web/charts/SwingChart.tsx'
import { stripLayout } from '../../web/charts/stripLayout.ts'
import { ValueBars } from '../../web/charts/ValueBars.tsx'
import { WorthLines } from '../../web/charts/WorthLines.tsx'
import { chooseLanguage } from '../../web/words/catalogue.ts'
import { collectLeg, scoreLeg } from './strip.fixture.ts'

/** One element a line, so that a changed snapshot can be read. */
const markup = (element: React.ReactElement) => renderToStaticMarkup(element).replaceAll('><', '>\n<')

const count = (text: string, part: string) => text.split(part).length - 1

/** 4 matches of 20 at 42 points, 10 at 60, 6 at 75: the mean is 60.9. */
const distribution: [number, number][] = [
  [42, 0.2],
  [60, 0.5],
  [75, 0.3],
]

describe('pictures', () => {
  test('the cycle strip as it was reviewed', () => {
    const layout = stripLayout([collectLeg, scoreLeg])
    expect(markup(<CycleStrip layout={layout} width={720} />)).toMatchSnapshot()
  })

  test('a bar that can be changed is a slider with its seconds, its path and its worth in words', () => {
    const handlers = {
      selected: null,
      onSelect: () => {},
      onDrag: () => {},
      canChange: (bar: { stage: string }) => bar.stage !== 'drive',
    }
    const text = markup(<CycleStrip layout={stripLayout([scoreLeg])} width={720} handlers={handlers} />)
    expect(count(text, 'role="slider"')).toBe(4)
    expect(text).toContain('Lift: 1.5\u00a0s, 3.1\u00a0s of float, a second less is worth 0.0 points a match')
    expect(text).toContain('Spin up: 5.0\u00a0s, on the critical path, a second less is worth 0.8 points a match')
  })

  test('a bar that is done once per piece says how often, and has a line through it for each but the first', () => {
    const three = { ...collectLeg, repeats: { grab: 3 } }
    const text = markup(<CycleStrip layout={stripLayout([three])} width={720} />)
    expect(text).toContain('Grab: 1.2\u00a0s, 3 times, on the critical path')
    expect(count(text, 'stroke-dasharray="3 2"')).toBe(2)
    expect(count(markup(<CycleStrip layout={stripLayout([collectLeg])} width={720} />), 'stroke-dasharray="3 2"')).toBe(
      0,
    )
  })

  test('two strips on one scale: half as long a cycle ends in the middle', () => {
    const layout = stripLayout([collectLeg])
    const ends = (until?: number) => {
      const text = markup(<CycleStrip layout={layout} width={718} until={until} />)
      const rows = [...text.matchAll(/<rect x="([\d.]+)" y="\d+" width="([\d.]+)" height="36"/g)]
      return Math.max(...rows.map(([, x, width]) => Number(x) + Number(width)))
    }
    // 4 px to the left, 14 to the right: 700 px for the scale; a bar ends 1.5 px early.
    expect(ends()).toBeCloseTo(702.5, 1)
    expect(ends(8.4)).toBeCloseTo(352.5, 1)
  })

  test('a bar whose worth is not known shows its seconds alone, one whose worth is known both', () => {
    const bare = markup(<CycleStrip layout={stripLayout([{ ...collectLeg, worth: {} }])} width={720} />)
    const texts = [...bare.matchAll(/>([^<>\n]+)<\/text>/g)].map(([, text]) => text!)
    expect(texts).toContain('3.0\u00a0s')
    expect(texts.filter((text) => /·\s*$/.test(text))).toEqual([])
    expect(bare).not.toContain('a second less is worth')
    const known = markup(<CycleStrip layout={stripLayout([collectLeg])} width={720} />)
    expect(known).toContain('1.2\u00a0s · +1.1/s')
  })

  test('a dot plot has 20 dots, of which those below the line are filled', () => {
    const rows = [{ id: 'a', name: 'Kittiwake', distribution, mean: 60.9 }]
    const text = markup(<DotPlot rows={rows} width={480} threshold={50} />)
    expect(count(text, '<circle')).toBe(20)
    expect(count(text, 'fill:var(--series-1);stroke:var(--series-1)')).toBe(4)
    expect(belowWords(distribution, 50)).toBe('in 4 of 20 matches less than 50 points')
    expect(text).toMatchSnapshot()
  })

  test('the policy strip as it was reviewed: the match runs to the right, the endgame line at 30 s', () => {
    const rows = [
      {
        id: 'gantry.1',
        name: 'Gantry, empty',
        bands: [
          { from: 135, to: 24, kind: 'collect' as const, text: 'collect 1 from Outer slipway' },
          { from: 24, to: 3, kind: 'finish' as const, text: 'go to Davit' },
          { from: 3, to: 0, kind: 'stop' as const, text: 'nothing more' },
        ],
      },
    ]
    expect(markup(<PolicyStrip rows={rows} teleop={135} endgame={30} width={560} />)).toMatchSnapshot()
  })

  test('break-even lines as they were reviewed, with the crossing where the lines meet', () => {
    const lines = [
      {
        id: 'with',
        name: 'With the hang',
        at: [
          [0.5, 58],
          [0.9, 62],
        ] as [number, number][],
      },
      {
        id: 'without',
        name: 'Without',
        at: [
          [0.5, 60],
          [0.9, 60],
        ] as [number, number][],
      },
    ]
    const text = markup(
      <BreakEvenLines
        lines={lines}
        crossings={[0.7]}
        likely={0.65}
        width={600}
        axis="Hang success"
        tick={(value) => `${Math.round(value * 100)} %`}
      />,
    )
    expect(text).toContain('the best option changes at 70 %')
    expect(text).toMatchSnapshot()
  })

  test('the swing chart has the widest bar on top and marks where another option is better', () => {
    const bars = [
      { id: 'small', name: 'Latch time', low: '× 0.6', high: '× 3', difference: [1.4, 0.6] as [number, number] },
      { id: 'wide', name: 'Hang success', low: '50 %', high: '95 %', difference: [3.1, -1.2] as [number, number] },
    ]
    const text = markup(
      <SwingChart bars={bars} base={1.1} width={600} ahead="still the best" behind="another is better" />,
    )
    expect(text.indexOf('Hang success</text>')).toBeLessThan(text.indexOf('Latch time</text>'))
    expect(text).toContain('another is better')
    expect(text).toMatchSnapshot()
  })

  test('value bars as they were reviewed', () => {
    const bars = [
      { id: 'a', name: 'Hang success', value: 0.9, error: 0.1, text: '0.9' },
      { id: 'b', name: 'Latch time', value: 0, text: '0.0' },
    ]
    expect(markup(<ValueBars bars={bars} width={400} label="Worth of knowing" />)).toMatchSnapshot()
  })

  test('a table of data has a caption and a header for every row and column', () => {
    const text = markup(<DataTable caption="Stages" table={{ head: ['Stage', 'Takes'], rows: [['Lift', '1.5 s']] }} />)
    expect(count(text, 'scope="col"')).toBe(2)
    expect(count(text, 'scope="row"')).toBe(1)
    expect(text).toContain('<caption class="visually-hidden">Stages</caption>')
  })
})

test('axes are written as the reader’s language writes numbers, without needless digits', async () => {
  await chooseLanguage(['de'])
  onTestFinished(() => chooseLanguage(['en']))
  const line = { id: 'a', name: 'A', index: 0, dash: 0, at: [[0, 0] as const, [20, 1.5] as const] }
  const worth = renderToStaticMarkup(<WorthLines lines={[line]} width={600} />)
  expect(worth).toContain('>0,5<')
  expect(worth).not.toMatch(/>\d+\.\d+</)
  const half: [number, number][] = [
    [-10, 0.5],
    [10, 0.5],
  ]
  const dots = renderToStaticMarkup(<DifferenceDots distribution={half} mean={0} width={600} index={0} axis="Punkte" />)
  expect(dots).toMatch(/>\u221210</)
  expect(dots).not.toMatch(/>[+\u2212]?\d+,0</)
})
