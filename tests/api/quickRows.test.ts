import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { readAnyRow, readUsualRow } from '../../src/api/records/rows.ts'
import { packRows, unpackRows } from '../../src/model/scouting/index.ts'
import { seen } from '../faults/harbourEvent.ts'
import { someRow } from '../model/scouting/someRow.ts'
import { bodies, oddTexts } from './mutations.ts'

const places = [{ goal: 'pier' }, { goal: 'mooring' }, { source: 'slip' }]
const rows = someRow({ ids: ['davit', 'left'], places } as unknown as Parameters<typeof someRow>[0])

/** As it arrives: what JSON has no word for is gone. */
const arrived = (value: unknown) => JSON.parse(JSON.stringify(value)) as unknown

/** What is read quickly is read as the contract would have; returns whether it was. */
function agrees(sent: unknown): boolean {
  const usual = readUsualRow(sent)
  if (usual !== undefined) expect(usual).toEqual(readAnyRow(sent))
  return usual !== undefined
}

test('an observation that is read without its contract is read to the letter as by it, hash and all', () => {
  const runs = 500
  let quick = 0
  fc.assert(
    fc.property(rows, (row) => {
      if (agrees(arrived(row))) quick++
      // The contract refuses what is left: some bodies say another id than their row.
      else expect(readAnyRow(arrived(row))).toMatchObject({ refused: expect.any(String) })
    }),
    { numRuns: runs, seed: 6 },
  )
  expect(quick).toBeGreaterThan(0.85 * runs)
  expect(agrees(arrived(seen(1, 1, { note: 'a ‘fast’ one,\n\u2028 🦑' })))).toBe(true)
})

test('what is changed in any way is read as by the contract, or left to it', () => {
  let left = 0
  const whole = seen(1, 1, {
    timeline: [{ elapsed: 3, what: 'scored', goal: 'pier', n: 2, counted: 'each', x: 1, y: 2 }],
  })
  fc.assert(
    fc.property(bodies(whole), (body) => {
      if (!agrees(arrived(body))) left++
    }),
    { numRuns: 1500, seed: 6 },
  )
  expect(left).toBeGreaterThan(500)
  for (const odd of [...oddTexts, '__proto__', 'a'.repeat(101), 'a\u007f', ' q1', 'q1\n', 'Ä"']) {
    agrees(arrived(seen(1, 1, { match: odd, scout: odd, driver: odd, note: odd })))
    agrees(arrived({ ...seen(1, 1), made: odd }))
  }
  for (const json of [
    '{"elapsed":1,"what":"scored","__proto__":{"n":1}}',
    '{"elapsed":1,"what":"scored","n":1e0,"x":-0}',
    '{"elapsed":1200.0000001,"what":"scored"}',
    '{"elapsed":1e-7,"what":"scored","x":0.1e1}',
    '{"elapsed":1,"what":"scored","n":null}',
    '[1,2]',
  ]) {
    const text = JSON.stringify(seen(1, 1, { timeline: [] })).replace('"timeline":[]', `"timeline":[${json}]`)
    agrees(JSON.parse(text))
  }
})

test('packed rows come back as they were, with their bodies and without', () => {
  const notes = ['one\ntwo', '‘three’ 🦑', '']
  const cells = notes.map((note, sequence) => readUsualRow(seen(1, sequence, { note }))!)
  const packed = packRows(cells)
  expect(unpackRows(packed)).toEqual(cells)
  expect(packed.ids.split('\n')).toEqual(cells.map(([id]) => id))
  expect(packed.scouts).toEqual(['scout-1'])
  expect(unpackRows({ ...packed, bodies: null })).toEqual(cells.map((each) => [...each.slice(0, -1), null]))
  expect(unpackRows(packRows(cells.slice(0, 1)))).toEqual(cells.slice(0, 1))
  expect(unpackRows(packRows([]))).toEqual([])
})
