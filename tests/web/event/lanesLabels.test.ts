import { expect, test } from 'vitest'
import { frameOf } from '../../../web/charts/FieldMap.tsx'
import { placeLabels } from '../../../web/screens/event/briefing/labels.ts'
import { game } from '../../model/reference.ts'

/** What a name of this size takes, with the letters a little narrower than the placing thinks. */
const boxOf = ({ text, x, y }: { text: string; x: number; y: number }) => {
  const half = (0.5 * 14 * text.length) / 2
  return { left: x - half, right: x + half, top: y - 11, bottom: y + 3 }
}

test.each([328, 360, 600, 704])(
  'names of all places keep clear of each other and stay in a picture of %i px',
  (width) => {
    const { x, y } = frameOf(game.field, width)
    const places = [...game.sources, ...game.goals, ...game.finishes]
    const points = places.map(({ name, spots }) => ({ text: name, x: x(spots[0]!.at[0]), y: y(spots[0]!.at[1]) }))
    const labels = placeLabels(points, { width, height: y(0) + 30, size: 14, drawn: [] })
    expect(labels.map(({ text }) => text)).toEqual(places.map(({ name }) => name))
    const boxes = labels.map(boxOf)
    for (const [k, a] of boxes.entries()) {
      expect(a.left).toBeGreaterThanOrEqual(0)
      expect(a.right).toBeLessThanOrEqual(width)
      for (const b of boxes.slice(k + 1))
        expect(a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom).toBe(false)
    }
  },
)

test('a name keeps clear of a circle where it can', () => {
  const [label] = placeLabels([{ text: 'Gantry', x: 100, y: 100 }], {
    ...{ width: 200, height: 200, size: 14 },
    drawn: [{ x: 100, y: 84, radius: 12 }],
  })
  expect(label!.y).toBeGreaterThan(100)
})
