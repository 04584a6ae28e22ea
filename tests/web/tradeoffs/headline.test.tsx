import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { breakwater } from '../../../seed/index.ts'
import { Headline } from '../../../web/screens/tradeoffs/Headline.tsx'

const { snapshot } = breakwater.decision
const { options, game } = snapshot

/** The answer where the first option leads the second by so much. */
function shown(lead: number, of: { finishes: boolean } = { finishes: true }): string {
  const report = {
    ...snapshot.result,
    options: snapshot.result.options.map((option, index) => ({ ...option, mean: index === 0 ? 50 + lead : 50 })),
  }
  const html = renderToStaticMarkup(
    <Headline
      report={report}
      record={breakwater.comparison}
      documents={{ game: of.finishes ? game : { ...game, finishes: [] }, options }}
      source="A comparison."
      kept={[
        {
          id: 'o',
          kind: 'points',
          option: options[0]!.id,
          points: 50.6,
          computed: 47.3,
          reason: 'Seen',
          who: 'T',
          on: '2031-01-01',
        },
      ]}
      state="fresh"
      progress={null}
    />,
  )
  return html
    .replace(/<span class="visually-hidden">.*?<\/span>/g, '')
    .replace(/<s>(.*?)<\/s>/g, '[$1]')
    .replace(/<[^>]*>/g, '')
}

describe('the answer of a trade-off', () => {
  test('names the best and its lead, or says that the two are level where nothing is left of it', () => {
    expect(shown(0.6)).toMatch(/^Shearwater, finish when it pays: \+0\.6 points a match/)
    expect(shown(0.04)).toMatch(
      /^‘Shearwater, finish when it pays’ and ‘Kittiwake, finish when it pays’ are level: 0\.0 points apart/,
    )
  })
  test('strikes what had been computed for a number that somebody set', () => {
    expect(shown(0.6)).toContain('[47.3]')
    expect(shown(0.6).match(/\[/g)).toHaveLength(1)
    // Not beside points that are computed without it still.
    expect(shown(0.2)).not.toContain('[')
  })
  test('says which of the robots may finish where', () => {
    expect(shown(0.6)).toContain(
      'A Shearwater, finish when it pays: may finish at Dry dock and Davit. B Kittiwake, finish when it pays: may finish at Dry dock.',
    )
  })
  test('says nothing about leaving the endgame out where the game has no finish', () => {
    expect(shown(0.6)).toContain('the endgame left out')
    expect(shown(0.6, { finishes: false })).not.toContain('the endgame left out')
  })
})
