/** 'How this came about' for the numbers of designs and of the field. */
export const explainDesigns = {
  toTradeOffs: 'To the trade-offs',
  toDesigns: 'To the designs',
  toStopwatch: 'To the stopwatch',
  otherwise: {
    points:
      'To have another number: change what goes in here, such as a stage’s time or a chance, in the design; or set points or pieces of your own, with the reason, under ‘Own numbers’ of a trade-off.',
    routine:
      'To have another number: change the routine’s steps and chances; or set autonomous points of your own, with the reason, under ‘Own numbers’ of a trade-off.',
    route:
      'To have another time: change the drive or the footprint in the design, or drag spots and obstacles; or set a driving time of your own between two spots: with the drive in the design, or with the reason under ‘Own numbers’ of a trade-off.',
  },
  spread: {
    title: (option: string) => `Match to match: ${option}`,
    result: (low: string, high: string) => `8 of 10 matches between ${low} and ${high} points`,
    formula:
      'The plan gives the chance of every number of points, exactly. Added up from the fewest points on, these chances pass a tenth at the lower number and nine tenths at the upper one. The standard deviation is the root of the mean squared distance from the mean, over the same chances. This is what changes from match to match; what is not known about the robot is not in it.',
  },
  waiting: {
    title: (leg: string) => `Longer than its bars: ${leg}`,
    result: (time: string) => `${time} on average`,
    formula:
      'The bars stand at mean times, and the longest path through them is their length. In a single trip the longest path goes through whichever stages happen to be late, so that trips are longer on average than the longest path of the averages. Tries that fail and are repeated come on top.',
    mean: 'A trip on average',
    bars: 'less its bars, end to end',
    total: 'Longer by',
    tenths: '8 of 10 trips take',
    between: (low: string, high: string) => `${low} to ${high}`,
  },
  float: {
    title: (stage: string) => `Float: ${stage}`,
    result: (time: string) => `${time} later delays nothing`,
    formula:
      'At their mean times the stages are put one after the other, each when all is done that it waits for: that gives its earliest end. Backwards from the end of the leg it gives the latest end that delays nothing. The difference is the float (critical path method, Kelley and Walker 1959).',
    latest: 'Could end at the latest',
    earliest: 'less: ends at the earliest',
    total: 'Float',
    begins: 'Begins at the earliest',
    takes: 'Takes on average',
  },
  critical: {
    title: (stage: string) => `On the longest path: ${stage}`,
    result: (share: string) => `in ${share} of trips`,
    formula: (draws: string) =>
      `For ${draws} trips a time of each stage is drawn from those that it varies between, and the longest path is looked for in each. Counted is how often the stage lies on it; of paths that are equally long, all count. Every stage of a path counts, so that the shares of a leg do not add up to one.`,
    takes: (time: string) => `takes ${time}`,
  },
  besideTime: {
    title: (mine: string, other: string) => `Time of the trip: ${other} beside ${mine}`,
    formula:
      'Each leg’s average over what its stages vary between, tries that are repeated included, for the same trip by both robots. Below, leg by leg, what the other design takes less what this one takes.',
    both: (mine: string, my: string, other: string, its: string) => `${mine} ${my}, ${other} ${its}`,
    total: 'The whole trip',
  },
  besidePoints: {
    title: (mine: string, other: string) => `Points: ${other} beside ${mine}`,
    formula:
      'For each design the match is planned, at every moment doing what is worth most for the time left. Its expected points are what that brings on average. The difference is the other design’s less this one’s.',
    less: (mine: string) => `less ${mine}`,
    total: 'Difference',
    this: 'This design is played as',
    other: 'The other is played as',
  },
  route: {
    title: (from: string, to: string) => `Route: ${from} to ${to}`,
    formula:
      'The shortest way of the robot’s centre that keeps from obstacles and border what the robot needs on both sides. Its time is that of an ideal driver from rest to rest: speeding up, at top speed, braking, and through bends as fast as the acceleration holds the robot on them. Pace is not in it.',
    cruise: 'All of it at top speed',
    rest: 'Starting, braking and bends',
    total: 'From rest to rest',
    away: 'The centre keeps from obstacles',
    size: 'Robot, length and width',
  },
}
