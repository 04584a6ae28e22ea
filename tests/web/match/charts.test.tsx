import { renderToStaticMarkup } from 'react-dom/server'
import { beforeAll, expect, test } from 'vitest'
import { game } from '../../../seed/game.ts'
import { MatchField } from '../../../web/charts/MatchField.tsx'
import { WaitingBars } from '../../../web/charts/WaitingBars.tsx'
import { allWords } from '../../../web/words/catalogue.ts'

/** One element a line, so that a changed snapshot can be read. */
const markup = (element: React.ReactElement) => renderToStaticMarkup(element).replaceAll('><', '>\n<')

beforeAll(() => allWords())

test('bars of waiting as they were reviewed, one row for each robot in its alliance’s pattern', () => {
  const places = [
    {
      id: 'channel',
      name: 'Channel slipway',
      robots: [
        { sign: 'R1', side: 'ours' as const, seconds: 4, error: 0.5 },
        { sign: 'B1', side: 'theirs' as const, seconds: 2, error: 0 },
      ],
    },
  ]
  const drawn = markup(<WaitingBars places={places} width={400} />)
  expect(drawn).toContain('aria-label="Seconds of waiting in a match. Channel slipway: R1 4.0\u00a0s, B1 2.0\u00a0s"')
  expect(drawn).toMatchSnapshot()
})

test('robots of a match as they were reviewed: to scale, numbered, patterned, with their pieces', () => {
  const robot = (sign: string, side: 'ours' | 'theirs', at: [number, number]) => ({
    sign,
    side,
    at,
    length: 0.8,
    out: false,
    waits: false,
    load: 0,
  })
  const drawn = markup(
    <MatchField
      game={game}
      width={720}
      told="The field"
      robots={[
        { ...robot('R1', 'ours', [1, 1]), load: 2 },
        { ...robot('R2', 'ours', [3, 4]), waits: true },
        { ...robot('B1', 'theirs', [10, 6]), out: true },
      ]}
    />,
  )
  const robots = drawn.slice(drawn.indexOf('aria-label="The field"'))
  expect(robots).toMatchSnapshot()
})
