import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { harbour, ternBest } from '../model/documents/harbour.ts'
import { type Server, startServer } from './server.ts'

let server: Server

beforeAll(async () => {
  server = await startServer()
})

afterAll(() => server.close())

describe('Travel and leg name what is wrong in their own request', () => {
  const { robot } = ternBest()

  test.each([
    ['travel', { from: 'left', to: 'nowhere' }, 400, ['to'], /'nowhere'/],
    ['travel', { from: 'left' }, 400, ['to'], /to is missing/],
    [
      'leg',
      { leg: { kind: 'finish', finish: 'quay', spot: 'dock.1', from: 'left' } },
      400,
      ['leg', 'finish'],
      /“quay”/,
    ],
    [
      'leg',
      { leg: { kind: 'collect', source: 'slip', spot: 'slip.1', from: 'left', load: 9 } },
      400,
      ['leg', 'load'],
      /\(2\), got 9/,
    ],
    ['leg', { leg: { kind: 'wait' } }, 400, ['leg', 'kind'], /"collect" or "score" or "finish", got "wait"/],
  ])('%s %j', async (name, request, status, path, words) => {
    const answer = await server.send('POST', `/api/compute/${name}`, { game: harbour(), robot, ...request })
    expect(answer.body.error.message).toMatch(words)
    expect(answer.status).toBe(status)
    expect(answer.body.error.path).toEqual(path)
  })
})

describe('A comparison is refused for', () => {
  const input = {
    id: 'hang',
    paths: ['/options/0/robot/finish/davit/success'],
    as: 'value',
    low: 0,
    likely: 0.5,
    high: 1,
  }
  const second = () => ({ ...ternBest(), id: 'tern-skip', finish: { mode: 'skip' } })

  test.each([
    ['no options', { options: [] }, ['options'], /at least 1 entry, got 0/],
    ['one option twice', { options: [ternBest(), ternBest()] }, ['options', 1, 'id'], /two options.*“tern-best”/],
    ['one input twice', { inputs: [input, input] }, ['inputs', 1, 'id'], /two inputs.*“hang”/],
    ['an unknown break-even', { inputs: [input], breakEven: 'luck' }, ['breakEven'], /no input.*“luck”/],
    ['a break-even of one', { options: [ternBest()], inputs: [input], breakEven: 'hang' }, ['options'], /at least two/],
    [
      'an input upside down',
      { inputs: [{ ...input, low: 2 }] },
      ['inputs', 0, 'likely'],
      /at least low \(2\), got 0\.5/,
    ],
    ['a level beyond what is possible', { inputs: [{ ...input, high: 1.5 }] }, ['inputs', 0], /between 0 and 1/],
    [
      'a path that leads nowhere',
      { inputs: [{ ...input, paths: ['/options/7/robot'] }] },
      ['inputs', 0],
      /leads nowhere/,
    ],
    ['a path to text', { inputs: [{ ...input, paths: ['/game/name'] }] }, ['inputs', 0], /name/],
    [
      'a path into what objects inherit',
      { inputs: [{ ...input, paths: ['/options/0/constructor/name'] }] },
      ['inputs', 0],
      /nowhere/,
    ],
    ['a seed that is none', { belief: { seed: -1 } }, ['belief', 'seed'], /at least 0, got -1/],
  ])('%s', async (_what, change, path, words) => {
    const body = { game: harbour(), options: [ternBest(), second()], ...change }
    const answer = await server.send('POST', '/api/compute/compare', body)
    expect(answer.body.error?.message, JSON.stringify(answer.body).slice(0, 300)).toMatch(words)
    expect(answer.status).toBe(400)
    expect(answer.body.error.path.slice(0, path.length)).toEqual(path)
  })
})

test.each(['/api/documents/%E0%A4%A', `/api/documents/game/${'x'.repeat(400)}`, '/api/jobs/%'])(
  'An address that can not be read is refused in a sentence: %s',
  async (address) => {
    const { status, body } = await server.get(address)
    expect([status, body.error.code]).toEqual([400, 'malformed'])
    expect(body.error.message).toMatch(/address can not be read/)
  },
)
