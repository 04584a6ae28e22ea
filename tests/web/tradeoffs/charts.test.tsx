import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { BestMap, type MapSide } from '../../../web/charts/BestMap.tsx'
import { DifferenceDots, dotsBehind } from '../../../web/charts/DifferenceDots.tsx'
import { LeaveStrip } from '../../../web/charts/LeaveStrip.tsx'
import { quantileDots } from '../../../web/charts/quantileDots.ts'
import { WorthLines } from '../../../web/charts/WorthLines.tsx'

/** One element a line, so that a changed snapshot can be read. */
const markup = (element: React.ReactElement) => renderToStaticMarkup(element).replaceAll('><', '>\n<')
const count = (text: string, part: string) => text.split(part).length - 1

describe('pictures of a trade-off', () => {
  test('differences have 20 dots, filled where the option scores less: 7 of 20 here', () => {
    const distribution: [number, number][] = [
      [-12, 0.1],
      [-2.5, 0.25],
      [0, 0.05],
      [6, 0.6],
    ]
    const text = markup(<DifferenceDots distribution={distribution} mean={1.775} width={480} index={1} axis="ahead" />)
    expect(dotsBehind(quantileDots(distribution))).toBe(7)
    expect(count(text, '<circle')).toBe(20)
    expect(count(text, 'fill:var(--series-2);stroke:var(--series-2)')).toBe(7)
    expect(text).toContain('behind in 7, mean +1.8')
    expect(text).toMatchSnapshot()
  })

  test('the map as it was reviewed: two regions in patterns, their border, the likely values and the place read', () => {
    const side = (name: string): MapSide => ({ name, low: 0, high: 1, likely: 0.5, tick: (value) => `${value}` })
    const rows = [0, 0.5, 1].map((y) => [0, 0.5, 1].map((x) => [x, 0.25 + 0 * y]))
    const text = markup(
      <BestMap
        rows={rows}
        x={side('Hang success')}
        y={side('Latch time')}
        names={['With', 'Without']}
        width={400}
        read={[0.5, 0.5]}
        onRead={() => {}}
      />,
    )
    expect(text).toContain('Best option over Hang success across and Latch time upwards: With 75 %, Without 25 %')
    expect(count(text, '<pattern')).toBe(2)
    expect(text).toContain('most likely')
    expect(text).toMatchSnapshot()
  })

  test('the leave-by strip as it was reviewed: solid while leaving is best, hatched when it is late, and the call', () => {
    const rows = [{ id: 'a', name: 'Gantry, empty', finish: 'Davit', from: 25, latest: 13, to: 9 }]
    const text = markup(<LeaveStrip rows={rows} call={21.5} endgame={30} width={600} />)
    expect(text).toContain('Gantry, empty: leave from 25.0\u00a0s, at the latest 13.0\u00a0s')
    expect(text).toContain('call')
    expect(markup(<LeaveStrip rows={rows} call={null} endgame={30} width={600} />)).not.toContain('call')
    expect(text).toMatchSnapshot()
  })

  test('the worth of a piece as it was reviewed, running down to the buzzer at the right', () => {
    const at: [number, number][] = [
      [0, 0],
      [5, 0],
      [10, 4],
      [20, 1.5],
    ]
    const text = markup(<WorthLines lines={[{ id: 'a', name: 'With', index: 0, dash: 0, at }]} width={400} />)
    expect(text).toContain('With, at most 4.0 points')
    expect(text).toMatchSnapshot()
  })
})
