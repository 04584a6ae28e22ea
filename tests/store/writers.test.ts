import { expect, test } from 'vitest'
import type { SaveOutcome } from '../../src/store/index.ts'
import { scratchWorkspace } from './scratch.ts'

const pier = { kind: 'option', id: 'pier', name: 'Pier' } as const

test('the second of two writers is told what stands there now and what both began from, and nothing is lost', async () => {
  const { team } = await scratchWorkspace()
  await team.save({ ...pier, body: { pieces: 4, finish: 'davit' }, base: null })
  await team.save({ ...pier, body: { pieces: 5, finish: 'davit' }, base: 1, note: 'first writer' })
  const refused = await team.save({ ...pier, body: { pieces: 4, finish: 'dry-dock' }, base: 1, note: 'second writer' })
  expect(refused).toMatchObject({
    conflict: {
      current: { revision: 2, body: { pieces: 5, finish: 'davit' }, note: 'first writer' },
      base: { revision: 1, body: { pieces: 4, finish: 'davit' } },
    },
  })
  expect((await team.get('option', 'pier'))?.body).toEqual({ pieces: 5, finish: 'davit' })
  const merged = await team.save({ ...pier, body: { pieces: 5, finish: 'dry-dock' }, base: 2 })
  expect(merged).toMatchObject({ saved: { revision: 3 } })
})

test('two who both begin a document under one id: the second is refused and there is no common base', async () => {
  const { team } = await scratchWorkspace()
  await team.save({ ...pier, body: 'mine', base: null })
  expect(await team.save({ ...pier, body: 'yours', base: null })).toMatchObject({
    conflict: { current: { revision: 1, body: 'mine' }, base: null },
  })
})

test('of twenty writers at the same moment exactly one is saved', async () => {
  const { team } = await scratchWorkspace()
  await team.save({ ...pier, body: 'start', base: null })
  const outcomes: SaveOutcome[] = await Promise.all(
    Array.from({ length: 20 }, (_, writer) => team.save({ ...pier, body: { writer }, base: 1 })),
  )
  const saved = outcomes.flatMap((outcome) => ('saved' in outcome ? [outcome.saved] : []))
  expect(saved.length).toBe(1)
  expect(await team.get('option', 'pier')).toEqual(saved[0])
  for (const outcome of outcomes)
    if ('conflict' in outcome) expect(outcome.conflict).toMatchObject({ current: saved[0], base: { body: 'start' } })
  expect((await team.revisions('option', 'pier')).length).toBe(2)
})

test('the same save sent again, because its answer got lost, is answered as the first time', async () => {
  const { team } = await scratchWorkspace()
  const request = { ...pier, body: { pieces: 4 }, base: null }
  const first = await team.save(request)
  expect(await team.save(request)).toEqual(first)
  expect((await team.revisions('option', 'pier')).length).toBe(1)
})

test('a restore that somebody else’s save overtook is refused like any other save', async () => {
  const { team } = await scratchWorkspace()
  await team.save({ ...pier, body: 1, base: null })
  await team.save({ ...pier, body: 2, base: 1 })
  await team.save({ ...pier, body: 3, base: 2 })
  expect(await team.restore('option', 'pier', 1, 2)).toMatchObject({ conflict: { current: { revision: 3, body: 3 } } })
})

test('several saved together are saved all or none', async () => {
  const { team } = await scratchWorkspace()
  await team.save({ ...pier, body: 1, base: null })
  const other = { kind: 'option', id: 'gantry', name: 'Gantry', body: 1, base: null } as const
  const refused = await team.saveAll([other, { ...pier, body: 2, base: null }])
  expect(refused).toMatchObject({ conflict: { current: { id: 'pier', body: 1 } } })
  expect((await team.list('option', true)).map(({ id }) => id)).toEqual(['pier'])
  const saved = await team.saveAll([other, { ...pier, body: 2, base: 1 }])
  expect(saved).toMatchObject({ saved: [{ id: 'gantry' }, { id: 'pier', revision: 2 }] })
})
