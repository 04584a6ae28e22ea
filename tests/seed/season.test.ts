import { describe, expect, it } from 'vitest'
import { breakwater, optionOf, seedDocuments } from '../../seed/index.ts'
import { checkGame, checkOption } from '../../src/model/documents/index.ts'
import { travel } from '../../src/model/field/index.ts'
import { cycleTimes } from './cycles.ts'

const { game, designs, options } = breakwater

describe('the Breakwater season', () => {
  it('has a game in which no check finds a problem', () => {
    expect(checkGame(game)).toEqual([])
  })

  it.each(options.map(({ option }) => option.id))('has an option %s in which no check finds a problem', (id) => {
    expect(checkOption(game, optionOf(id))).toEqual([])
  })

  // Worked out here by hand, independently of the model: a mirror turns x into length - x.
  it('has obstacles that map onto each other across the middle', () => {
    const outlines = game.field.obstacles.map(({ outline }) => corners(outline))
    const mirrored = game.field.obstacles.map(({ outline }) =>
      corners(outline.map(([x, y]): [number, number] => [game.field.length - x, y])),
    )
    expect(mirrored.toSorted()).toEqual(outlines.toSorted())
  })

  it.each(designs.map(({ robot }) => robot))('lets $name drive between any two of its places', (robot) => {
    const places = [...game.sources, ...game.goals, ...game.finishes].flatMap(({ spots }) => spots)
    const ids = [...game.starts, ...places].map(({ id }) => id)
    for (const from of ids) {
      for (const to of ids) {
        const { length, seconds } = travel(game, robot, from, to)
        if (from === to) expect(length).toBe(0)
        // Nobody crosses a field of 16.6 by 8.2 m in less than its top speed allows, nor needs a detour beyond it.
        else expect(seconds, `${from} to ${to}`).toBeGreaterThan(length / robot.drive.topSpeed)
        expect(length, `${from} to ${to}`).toBeLessThan(18)
      }
    }
  })

  it.each(designs.map(({ robot }) => robot))('has cycles of $name that vary by 20 to 35 %, as drivers do', (robot) => {
    for (const { name, mean, sd } of cycleTimes(game, robot)) {
      expect(sd / mean, name).toBeGreaterThan(0.2)
      expect(sd / mean, name).toBeLessThan(0.35)
    }
  })

  it('has robots of different form, speed and mass, within the rules', () => {
    for (const { robot } of designs) {
      expect(robot.form.spread).toBeGreaterThanOrEqual(1.1)
      expect(robot.form.spread).toBeLessThanOrEqual(1.2)
      expect(robot.drive.topSpeed).toBeGreaterThanOrEqual(3)
      expect(robot.drive.topSpeed).toBeLessThanOrEqual(4.5)
      expect(robot.budget?.mass).toBeLessThanOrEqual(game.limits!.mass)
      expect(robot.budget?.cost).toBeLessThanOrEqual(game.limits!.cost)
    }
    expect(new Set(designs.map(({ robot }) => robot.budget?.mass)).size).toBe(designs.length)
  })

  it('saves what others refer to before what refers to it', () => {
    const saved = new Set<string>()
    for (const { kind, id, body } of seedDocuments()) {
      for (const reference of references(body))
        expect(saved, `${kind} ${id} refers to ${reference}`).toContain(reference)
      saved.add(id)
    }
    expect(saved.size).toBe(seedDocuments().length)
  })
})

/** Corners to the millimetre, in an order that does not depend on where the outline begins. */
function corners(outline: [number, number][]): string {
  return outline
    .map(([x, y]) => `${Math.round(x * 1000)},${Math.round(y * 1000)}`)
    .toSorted()
    .join(' ')
}

function references(body: unknown): string[] {
  const record = body as {
    game?: string | { id: string }
    design?: string
    options?: { option: { id: string }; design: { id: string } }[]
    comparison?: { id: string }
  }
  const game = typeof record.game === 'string' ? record.game : record.game?.id
  const named = [game, record.design, record.comparison?.id].filter((id): id is string => typeof id === 'string')
  return [...named, ...(record.options ?? []).flatMap(({ option, design }) => [option.id, design.id])]
}
