/** The fields of a Duration. */
export const durations = {
  kinds: {
    fixed: 'always the same',
    range: 'low, likely, high',
    lognormal: 'median and spread',
    samples: 'measured times',
  },
  kind: 'Said as',
  average: (value: string) => `${value} on average`,
  time: 'Time',
  low: 'Low',
  likely: 'Likely',
  high: 'High',
  median: 'Median',
  spread: 'Spread',
  spreadHelp: '2 of 3 trips lie within this factor',
  times: 'Measured times, s',
  timesHelp: 'At least three, with spaces between them',
}
