import { describe, expect, test } from 'vitest'
import { checkRobot, type Robot, type Stage } from '../../../src/model/documents/index.ts'
import { harbour, tern } from './harbour.ts'
import { type Case, expectOne } from './problems.ts'

function stagesOf(robot: Robot): Stage[] {
  const trip = robot.collect['slip']!
  if (!('stages' in trip)) throw new Error('the trip has no stages')
  return trip.stages
}

const stages = ['collect', 'slip', 'stages']

const cases: Case<Robot>[] = [
  [
    'a stage that waits for itself',
    (robot) => Object.assign(stagesOf(robot)[0]!, { after: ['lower'] }),
    [...stages, 0, 'after', 0],
    /“lower” waits for itself/,
  ],
  [
    'stages that wait for each other in a circle, each named',
    (robot) => Object.assign(stagesOf(robot)[0]!, { after: ['take'] }),
    [...stages, 0, 'after'],
    /“lower” waits for itself: lower after take after lower/,
  ],
  [
    'an unknown stage',
    (robot) => Object.assign(stagesOf(robot)[1]!, { after: ['drive', 'lowered'] }),
    [...stages, 1, 'after', 1],
    /“take” waits for “lowered”, which is not a stage/,
  ],
  [
    'a stage called drive',
    (robot) => Object.assign(stagesOf(robot)[0]!, { id: 'drive', after: [] }) && stagesOf(robot)[1]!.after.pop(),
    [...stages, 0, 'id'],
    /can not be called “drive”/,
  ],
  [
    'two stages with one id',
    (robot) => Object.assign(stagesOf(robot)[1]!, { id: 'lower', after: ['drive'] }),
    [...stages, 1, 'id'],
    /two stages with the id “lower”/,
  ],
  [
    'tries that fail without a time for another one',
    ({ collect }) => Object.assign(collect['slip']!, { retry: null }),
    ['collect', 'slip', 'retry'],
    /success of 0\.9/,
  ],
  [
    'a pace that can go below 1 as a range',
    ({ drive }) => Object.assign(drive, { pace: { kind: 'range', low: 0.9, likely: 1, high: 1.2 } }),
    ['drive', 'pace', 'low'],
    /at least 1, got 0\.9/,
  ],
  [
    'a fixed pace below 1',
    ({ drive }) => Object.assign(drive, { pace: { kind: 'fixed', seconds: 0.5 } }),
    ['drive', 'pace', 'seconds'],
    /got 0\.5/,
  ],
  [
    'a measured pace below 1',
    ({ drive }) => Object.assign(drive, { pace: { kind: 'samples', seconds: [1, 1.2, 0.99, 0.5] } }),
    ['drive', 'pace', 'seconds', 2],
    /got 0\.99/,
  ],
  [
    'a lognormal pace, whose support begins at 0',
    ({ drive }) => Object.assign(drive, { pace: { kind: 'lognormal', median: 3, spread: 1.1 } }),
    ['drive', 'pace', 'kind'],
    /use a range or samples/,
  ],
  ['an unknown piece in hand', ({ carries }) => Object.assign(carries, { crate: 1 }), ['carries', 'crate'], /“crate”/],
  [
    'a preload of more than it carries',
    (robot) => Object.assign(robot, { preload: { piece: 'buoy', count: 3 } }),
    ['preload', 'count'],
    /at most what the robot carries of “buoy” \(2\), got 3/,
  ],
  [
    'collecting what it does not carry',
    (robot) => Object.assign(robot, { carries: { net: 1 }, preload: null }),
    ['carries'],
    /collects “buoy” at “slip”/,
  ],
  [
    'an entry for an unknown source',
    ({ collect }) => Object.assign(collect, { quay: { stages: [], success: 1, retry: null } }),
    ['collect', 'quay'],
    /no source with the id “quay”/,
  ],
  [
    'an entry for an unknown goal',
    ({ score }) => Object.assign(score, { crow: [{ stages: [], spots: 'any', success: 1 }] }),
    ['score', 'crow'],
    /no goal with the id “crow”/,
  ],
  [
    'a spot that belongs to another place',
    ({ score }) => Object.assign(score['pier']![0]!, { spots: ['pier.1', 'mast.1'] }),
    ['score', 'pier', 0, 'spots', 1],
    /no spot of the goal “pier” with the id “mast\.1”/,
  ],
  [
    'a failure that earns the finish itself',
    ({ finish }) => Object.assign(finish['davit']!, { otherwise: 'davit' }),
    ['finish', 'davit', 'otherwise'],
    /“davit” can not earn “davit” itself/,
  ],
  [
    'a failure that earns an unknown finish',
    ({ finish }) => Object.assign(finish['davit']!, { otherwise: 'quay' }),
    ['finish', 'davit', 'otherwise'],
    /no finish with the id “quay”/,
  ],
  [
    'a step after the autonomous',
    ({ autos }) => Object.assign(autos[0]!.steps[0]!, { at: 15.1 }),
    ['autos', 0, 'steps', 0, 'at'],
    /autonomous of 15 s, got 15\.1/,
  ],
  [
    'a step with a piece that its goal does not accept',
    ({ autos }) => Object.assign(autos[0]!.steps[0]!, { piece: 'net' }),
    ['autos', 0, 'steps', 0, 'piece'],
    /“pier” does not accept “net”/,
  ],
  [
    'a routine that ends nowhere',
    ({ autos }) => Object.assign(autos[0]!, { endsAt: 'pier' }),
    ['autos', 0, 'endsAt'],
    /no start or spot with the id “pier”/,
  ],
  [
    'a routine from an unknown start',
    ({ autos }) => autos[0]!.starts.push('middle'),
    ['autos', 0, 'starts', 1],
    /no start with the id “middle”/,
  ],
  [
    'a routine that ends with more than the robot carries',
    ({ autos }) => Object.assign(autos[0]!, { holding: { piece: 'buoy', count: 5 } }),
    ['autos', 0, 'holding', 'count'],
    /\(2\), got 5/,
  ],
  [
    'a habit of leaving before teleop began',
    (robot) => Object.assign(robot, { habit: { goals: { pier: 1 }, pieces: { 1: 1 }, departs: 61 } }),
    ['habit', 'departs'],
    /at most 60 s, got 61/,
  ],
  [
    'a habit of more pieces than it carries',
    (robot) => Object.assign(robot, { habit: { goals: { pier: 1 }, pieces: { 1: 0.5, 3: 0.5 }, departs: 20 } }),
    ['habit', 'pieces', '3'],
    /carries \(2\), got 3/,
  ],
  [
    'a habit of trips for no number of pieces',
    (robot) => Object.assign(robot, { habit: { goals: { pier: 1 }, pieces: { 1: 0 }, departs: 20 } }),
    ['habit', 'pieces'],
    /needs a share above 0/,
  ],
  [
    'waiting taken out of a place that is not there',
    (robot) =>
      Object.assign(robot, { habit: { goals: { pier: 1 }, pieces: { 1: 1 }, departs: 20, unhindered: { quay: 0.9 } } }),
    ['habit', 'unhindered', 'quay'],
    /no place with the id “quay”/,
  ],
  [
    'a draw that leaves before teleop began',
    (robot) =>
      Object.assign(robot, {
        habit: { goals: { pier: 1 }, pieces: { 1: 1 }, departs: 20, draws: [{}, { departs: 70 }] },
      }),
    ['habit', 'draws', 1, 'departs'],
    /at most 60 s, got 70/,
  ],
  [
    'a draw of a finish that the robot has not',
    (robot) =>
      Object.assign(robot, { habit: { goals: {}, pieces: {}, departs: 20, draws: [{ finish: { moon: 0.5 } }] } }),
    ['habit', 'draws', 0, 'finish', 'moon'],
    /no entry for the finish “moon”/,
  ],
]

describe('A robot is refused, with the field and a sentence, for', () => {
  test.each(cases)('%s', (_what, change, path, words) => {
    const robot = tern()
    change(robot)
    expectOne(checkRobot(harbour(), robot), path, words)
  })
})

test('A robot in which everything fits has no problem', () => {
  expect(checkRobot(harbour(), tern())).toEqual([])
})

test('A lognormal pace without spread is a point, and allowed from 1 on', () => {
  const robot = tern()
  robot.drive.pace = { kind: 'lognormal', median: 1, spread: 1 }
  expect(checkRobot(harbour(), robot)).toEqual([])
})

test('A long chain of stages is no loop, whatever order they are written in', () => {
  const robot = tern()
  const chain = Array.from(
    { length: 40 },
    (_, index): Stage => ({
      id: `s${index}`,
      name: `Stage ${index}`,
      duration: { kind: 'fixed', seconds: 0.1 },
      after: index === 39 ? ['drive'] : [`s${index + 1}`],
    }),
  )
  robot.finish['dock'] = { stages: chain, success: 1, otherwise: null }
  expect(checkRobot(harbour(), robot)).toEqual([])
})

test('Every stage after every earlier one is checked at once, not way by way', () => {
  const robot = tern()
  // 2^39 ways lead through this network: a search that follows each would not end.
  const stages = Array.from(
    { length: 40 },
    (_, index): Stage => ({
      id: `s${index}`,
      name: `Stage ${index}`,
      duration: { kind: 'fixed', seconds: 0.1 },
      after: Array.from({ length: index }, (_, before) => `s${before}`),
    }),
  )
  robot.finish['dock'] = { stages, success: 1, otherwise: null }
  const began = performance.now()
  expect(checkRobot(harbour(), robot)).toEqual([])
  expect(performance.now() - began).toBeLessThan(1000)
})
