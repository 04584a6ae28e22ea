import type { Input } from '../src/model/compare/types.ts'

const shearwater = '/options/0'
const kittiwake = '/options/1'

/** What the team does not know about its two sisters, in the order of the comparison's options. */
export const inputs: Input[] = [
  {
    id: 'Hang success',
    paths: [`${shearwater}/robot/finish/davit/success`],
    as: 'value',
    low: 0.35,
    likely: 0.74,
    high: 0.97,
    perMeasurement: 0.44,
  },
  {
    id: 'Latch time',
    paths: [`${shearwater}/robot/finish/davit/stages/2/duration`],
    as: 'factor',
    low: 0.6,
    likely: 1,
    high: 1.8,
    perMeasurement: 0.5,
  },
  {
    id: 'Pace of the practised drivers',
    paths: [`${kittiwake}/robot/drive/pace`],
    as: 'add',
    low: -0.03,
    likely: 0,
    high: 0.12,
    perMeasurement: 0.25,
  },
  {
    id: 'Hooking on at the gantry',
    paths: [
      `${shearwater}/robot/score/gantry/0/stages/2/duration`,
      `${kittiwake}/robot/score/gantry/0/stages/2/duration`,
    ],
    as: 'factor',
    low: 0.7,
    likely: 1,
    high: 1.8,
    perMeasurement: 0.5,
  },
  {
    id: 'Lining up with the ramp',
    paths: [
      `${shearwater}/robot/collect/outer/stages/1/duration`,
      `${kittiwake}/robot/collect/outer/stages/1/duration`,
    ],
    as: 'factor',
    low: 0.7,
    likely: 1,
    high: 1.8,
    perMeasurement: 0.5,
  },
  {
    id: 'Seconds held per buoy',
    paths: [`${shearwater}/holdSeconds/lightship`, `${kittiwake}/holdSeconds/lightship`],
    as: 'value',
    low: 3,
    likely: 5,
    high: 8,
  },
]
