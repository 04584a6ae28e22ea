import { describe, expect, test } from 'vitest'
import type { SaveOutcome } from '../../src/store/index.ts'
import { scratchStore, scratchWorkspace } from './scratch.ts'

const buoy = { kind: 'game', id: 'buoy', name: 'Buoy' } as const

function savedOf(outcome: SaveOutcome | null) {
  if (outcome === null || 'conflict' in outcome) throw new Error('not saved')
  return outcome.saved
}

/** A clock that goes on by a minute at each reading. */
function clock() {
  let minutes = 0
  return () => new Date(Date.UTC(2026, 0, 10, 9, minutes++))
}

describe('a document keeps its revisions', () => {
  test('each save adds one, the newest is read, and an older one can still be opened', async () => {
    const { team } = await scratchWorkspace({ now: clock() })
    const first = savedOf(await team.save({ ...buoy, body: { points: 3 }, base: null }))
    const second = savedOf(await team.save({ ...buoy, name: 'Buoys', body: { points: 4 }, base: 1, note: 'rule 4' }))
    expect([first.revision, second.revision]).toEqual([1, 2])
    expect(await team.get('game', 'buoy')).toEqual(second)
    expect(await team.get('game', 'buoy', 1)).toEqual(first)
    expect(await team.revisions('game', 'buoy')).toEqual([
      { revision: 2, savedAt: second.savedAt, name: 'Buoys', note: 'rule 4' },
      { revision: 1, savedAt: first.savedAt, name: 'Buoy', note: null },
    ])
    expect(Date.parse(second.savedAt) - Date.parse(first.savedAt)).toBe(60_000)
  })

  test('restoring adds a copy of the older revision as the newest', async () => {
    const { team } = await scratchWorkspace()
    await team.save({ ...buoy, body: { points: 3 }, base: null })
    await team.save({ ...buoy, name: 'Buoys', body: { points: 4 }, base: 1 })
    const restored = savedOf(await team.restore('game', 'buoy', 1, 2))
    expect(restored).toMatchObject({ revision: 3, name: 'Buoy', body: { points: 3 } })
    expect((await team.get('game', 'buoy', 2))?.body).toEqual({ points: 4 })
  })

  test('restoring a revision that does not exist is answered with null and changes nothing', async () => {
    const { team } = await scratchWorkspace()
    await team.save({ ...buoy, body: 1, base: null })
    expect(await team.restore('game', 'buoy', 7, 1)).toBeNull()
    expect(await team.restore('game', 'pier', 1, 1)).toBeNull()
    expect((await team.revisions('game', 'buoy')).length).toBe(1)
  })

  test('a body comes back as it was, unusual text and numbers included', async () => {
    const { team } = await scratchWorkspace()
    const body = {
      text: 'ö – “ \u2028 😀 \' "',
      numbers: [0.1, -0, 1e-300, 1.7976931348623157e308],
      none: null,
      deep: [[[]]],
    }
    await team.save({ ...buoy, body, base: null })
    expect((await team.get('game', 'buoy'))?.body).toEqual(JSON.parse(JSON.stringify(body)))
  })

  test('the same id may name a document of each kind', async () => {
    const { team } = await scratchWorkspace()
    await team.save({ ...buoy, body: 'game', base: null })
    await team.save({ ...buoy, kind: 'design', body: 'design', base: null })
    expect((await team.get('game', 'buoy'))?.body).toBe('game')
    expect((await team.get('design', 'buoy'))?.body).toBe('design')
  })
})

describe('a removed document', () => {
  test('leaves the list, is still there, and comes back by undo', async () => {
    const { team } = await scratchWorkspace()
    await team.save({ ...buoy, body: 1, base: null })
    expect(await team.remove('game', 'buoy')).toBe(true)
    expect(await team.list('game')).toEqual([])
    expect((await team.list('game', true)).map(({ id, removed }) => [id, removed])).toEqual([['buoy', true]])
    expect((await team.get('game', 'buoy'))?.body).toBe(1)
    expect(await team.remove('game', 'buoy', true)).toBe(true)
    expect((await team.list('game')).map(({ id }) => id)).toEqual(['buoy'])
  })

  test('comes back when somebody who still had it open saves it', async () => {
    const { team } = await scratchWorkspace()
    await team.save({ ...buoy, body: 1, base: null })
    await team.remove('game', 'buoy')
    expect(savedOf(await team.save({ ...buoy, body: 2, base: 1 })).removed).toBe(false)
    expect((await team.list('game')).length).toBe(1)
  })

  test('that never existed is said not to exist', async () => {
    const { team } = await scratchWorkspace()
    expect(await team.remove('game', 'buoy')).toBe(false)
    expect(await team.get('game', 'buoy')).toBeNull()
    expect(await team.revisions('game', 'buoy')).toEqual([])
  })
})

test('a list is in the order of names, with the newest name and revision of each', async () => {
  const { team } = await scratchWorkspace()
  await team.save({ kind: 'design', id: 'a', name: 'Tern', body: 1, base: null })
  await team.save({ kind: 'design', id: 'b', name: 'Gull', body: 1, base: null })
  await team.save({ kind: 'design', id: 'a', name: 'Auk', body: 2, base: 1 })
  expect((await team.list('design')).map(({ name, revision }) => [name, revision])).toEqual([
    ['Auk', 2],
    ['Gull', 1],
  ])
})

describe('a workspace', () => {
  test('neither sees, changes, restores nor removes what belongs to another', async () => {
    const { store, team } = await scratchWorkspace()
    const rivals = store.workspace(await store.ensureWorkspace('rivals'))
    await team.save({ ...buoy, body: 'ours', base: null })
    expect(await rivals.list('game', true)).toEqual([])
    expect(await rivals.get('game', 'buoy')).toBeNull()
    expect(await rivals.revisions('game', 'buoy')).toEqual([])
    expect(await rivals.restore('game', 'buoy', 1, 1)).toBeNull()
    expect(await rivals.remove('game', 'buoy')).toBe(false)
    expect(savedOf(await rivals.save({ ...buoy, body: 'theirs', base: null })).revision).toBe(1)
    expect((await team.get('game', 'buoy'))?.body).toBe('ours')
    expect((await team.revisions('game', 'buoy')).length).toBe(1)
  })

  test('of the same name is the same one, also when it is asked for twice at once', async () => {
    const { store } = await scratchStore()
    const [one, two] = await Promise.all([store.ensureWorkspace('team'), store.ensureWorkspace('team')])
    expect(one).toBe(two)
    expect(await store.ensureWorkspace('rivals')).not.toBe(one)
  })

  test('that was never made can not be written to', async () => {
    const { store } = await scratchStore()
    await expect(store.workspace('nowhere').save({ ...buoy, body: 1, base: null })).rejects.toThrow(/constraint/i)
    expect(await store.isEmpty()).toBe(true)
  })
})

test('the store is empty until the first document is saved', async () => {
  const { store, team } = await scratchWorkspace()
  expect(await store.isEmpty()).toBe(true)
  await team.save({ ...buoy, body: 1, base: null })
  expect(await store.isEmpty()).toBe(false)
})
