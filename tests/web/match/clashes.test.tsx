import { renderToStaticMarkup } from 'react-dom/server'
import { beforeAll, expect, test } from 'vitest'
import { game } from '../../../seed/game.ts'
import { optionOf } from '../../../seed/index.ts'
import type { Option } from '../../../src/model/documents/types.ts'
import { Clashes } from '../../../web/screens/match/Clashes.tsx'
import { allWords } from '../../../web/words/catalogue.ts'

beforeAll(() => allWords())

const [shearwater, puffin, kittiwake] = ['shearwater-best', 'puffin-best', 'kittiwake-best'].map(optionOf) as [
  Option,
  Option,
  Option,
]
const shown = (ours: Option[]) =>
  renderToStaticMarkup(<Clashes game={game} lineup={{ ours, theirs: [shearwater, puffin, kittiwake] }} />)

test('partners that begin at one start are named beside the line-up, and nothing stands there where none clash', () => {
  // Shearwater and Kittiwake of the demo both begin in the middle; radii of 0.43 m and 0.4 m.
  expect(shown([shearwater, puffin, kittiwake])).toContain(
    'R1 Shearwater and R3 Kittiwake begin in each other’s place: 0\u00a0m from centre to centre, and they touch below 0.83\u00a0m.',
  )
  const apart = { ...kittiwake, start: puffin.start, auto: null }
  const alone = [shearwater, { ...puffin, start: 'quay-north', auto: null }, apart]
  const markup = renderToStaticMarkup(<Clashes game={game} lineup={{ ours: alone, theirs: alone }} />)
  expect(markup).toBe('')
})
