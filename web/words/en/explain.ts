/** 'How this came about', for each kind of number: its formula in words and the names of its parts. */
export const explain = {
  option: {
    title: (option: string) => `Expected points: ${option}`,
    result: (mean: string, low: string, high: string) =>
      `${mean} points a match; 8 of 10 matches between ${low} and ${high}`,
    formula:
      'The plan gives the chance of every number of points, exactly. The mean is each number times its chance, summed; the spread is that of the same chances from match to match.',
    mean: 'Mean',
    deviation: 'Standard deviation',
    low: '1 of 10 matches has less than',
    middle: 'Half of the matches have less than',
    high: '9 of 10 matches have less than',
  },
  robot: {
    robot: 'Robot',
    topSpeed: 'Top speed',
    acceleration: 'Acceleration, braking',
    form: 'Spread of form',
    finish: 'Finish',
  },
  finish: {
    always: (time: string) => `always at ${time} left`,
    skip: 'left out',
    best: 'when it pays',
  },
  plan: {
    formula:
      'At every moment the robot does what is worth most for the time left: for each possible trip, the points it brings times its chance, plus what the time after it is still worth. The parts below are what that brings on average.',
    autonomous: 'Autonomous',
    each: (pieces: string, award: string) =>
      `${pieces} pieces in teleop × ${award} ${award === '1' ? 'point' : 'points'}`,
    held: (pieces: string, seconds: string, award: string) =>
      `${pieces} pieces in teleop × up to ${seconds} s held × ${award} ${award === '1' ? 'point' : 'points'} a second`,
    tried: (share: string) => `tried in ${share} of matches`,
    adjusted: 'Adjusted by hand',
    total: 'Expected points',
  },
  lead: {
    title: 'The lead',
    result: (lead: string) => `${lead} points a match`,
    formula:
      'Expected points of the best option less those of the next, each option played as well as its robot can, every number as its documents say.',
    less: (option: string) => `less ${option}`,
    between: (low: string, high: string) => `8 of 10 matches between ${low} and ${high}`,
    total: 'Lead',
  },
  chance: {
    title: 'Chance of being the better choice',
    none: 'not computed',
    formula:
      'Each unknown is drawn from what you believe about it, 2,000 times, all options on the same draws; counted is how often each option has the most expected points.',
    regret: (points: string) =>
      `${points} points a match lost on average if it is chosen and another would have been better`,
    believed: (low: string, high: string, likely: string) => `${low} to ${high}, likely ${likely}`,
  },
  openedShort: 'how this came about',
  parts: 'Parts',
  inputs: 'Inputs',
  result: 'Result',
  total: 'Sum',
  opened: 'How this came about',
  openedOf: (what: string) => `How ‘${what}’ came about`,
  kept: (record: string, revision: number) => `Kept with the decision record ‘${record}’, revision ${revision}.`,
}
