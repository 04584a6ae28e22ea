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
    'Solid bars are the critical path: what the robot waits for. Pale bars have float, hatched. ‘+0.8/s’: points a match that a second less there is worth. A bar with lines through it is done once per piece.',
  keys: 'Drag a bar’s end by mouse or finger. On a bar, the arrow keys change its time by 0.1 s, with Shift or Page Up and Page Down by 0.5 s; Ctrl and an arrow key change places with the stage before or after it; Delete removes it.',
  waiting: (legs: string) =>
    `On average a leg takes longer than its bars (${legs}), because stages wait for whichever is late, and tries are repeated.`,
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
}
