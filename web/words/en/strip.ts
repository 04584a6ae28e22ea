/** The cycle strip: its bars, what is done with them, and two strips one above the other. */
export const strip = {
  title: 'Cycle strip',
  figure: 'Where the time of a cycle goes',
  loading: 'the strip',
  slider: (name: string) => `${name}, seconds`,
  bar: (name: string, time: string) => `${name}: ${time}`,
  repeated: (count: number) => `${count} times`,
  onPath: 'on the critical path',
  float: (time: string) => `${time} of float`,
  worth: (points: string) => `a second less is worth ${points} points a match`,
  perSecond: (points: string) => `${points}/s`,
  drive: 'Drive',
  whole: 'Whole leg',
  head: ['Stage', 'Begins', 'Takes', 'Float', 'On the longest path', 'Worth a second'],
  worthCell: (points: string) => `${points} points`,
  lastGood: 'The strip shows the last design that could be computed:',
  none: 'This design can not be computed:',
  legend:
    'Solid bars are the critical path: what the robot waits for. Pale bars have float, hatched. ‘+0.8/s’: points a match that a second less there is worth. A bar with lines through it is done once per piece; one with a cogwheel has its time from hardware, or hardware beside its time.',
  keys: (key: {
    longer: string
    shorter: string
    much: string
    muchLess: string
    earlier: string
    later: string
    remove: string
  }) =>
    `Drag a bar’s end by mouse or finger. On a bar, ${key.longer} and ${key.shorter} change its time by 0.1 s, ${key.much} and ${key.muchLess} by 0.5 s; ${key.earlier} and ${key.later} change places with the stage before or after it; ${key.remove} removes it.`,
  /** Around the legs that take longer. */
  waiting: [
    'On average a leg takes longer than its bars (',
    '), because stages wait for whichever is late, and tries are repeated.',
  ] as [string, string],
  noCycle:
    'This robot, played so, has no trip that collects a piece and scores it. Say below what it can do, or change the way to play.',
  views: {
    label: 'Shown legs',
    cycle: 'Whole cycle',
    collect: 'Collect',
    score: 'Score',
  },
  cycle: {
    label: 'Cycle',
    collectingAt: 'Collecting at',
    scoringAt: 'Scoring at',
    pieces: 'Pieces',
    pair: (source: string, goal: string) => `${source} to ${goal}`,
    way: (pair: string, number: number) => `${pair}, way ${number}`,
  },
  legs: {
    collect: (spot: string) => `Collect from ${spot}`,
    score: (spot: string) => `Score at ${spot}`,
    finish: (spot: string) => `To ${spot}`,
  },
  beside: {
    title: 'Beside another design',
    help: 'Both strips stand on the same time scale, for the same trip.',
    choose: 'Other design',
    none: 'no other design',
    alone: 'This game has no other design yet. Save a copy of this one, or sketch another.',
    way: 'Played as',
    all: 'all that it can do',
    strip: (name: string) => `Cycle strip of ${name}`,
    can: (name: string) => `${name} can not do this trip, so there is nothing to lay beside it.`,
    loads: (name: string, count: number) => `${name} carries at most ${count} on it.`,
    trouble: (name: string, why: string) => `${name} can not be computed: ${why}`,
    more: (time: string) => `${time} more`,
    less: (time: string) => `${time} less`,
    same: 'the same time, to 0.1 s',
    whole: (of: { mine: string; my: string; other: string; its: string; difference: string }) =>
      `${of.mine} takes ${of.my} on average, ${of.other} ${of.its}: ${of.difference}.`,
    leg: (name: string, difference: string) => `${name}: ${difference}`,
    where: (legs: string) => `Of that ${legs}.`,
    points: (of: { mine: string; my: string; other: string; its: string; difference: string }) =>
      `Points a match: ${of.mine} ${of.my}, ${of.other} ${of.its}: ${of.difference} for ${of.other}.`,
    equal: (points: string) => `Both bring ${points} expected points a match, to 0.1.`,
    computing: 'The points are being computed …',
  },
}
