/** The answer of a comparison, in sentences that several screens share. */
export const verdict = {
  headline: (option: string, lead: string) => `${option}: ${lead} points a match`,
  level: (option: string, other: string) => `‘${option}’ and ‘${other}’ are level`,
  alone: 'There is nothing to compare it with yet.',
  chance: (chance: string) => `the better choice with a chance of ${chance} over what you believe`,
  matches: (option: string, share: string) => `ahead of ‘${option}’ in ${share} of single matches`,
  believed: (low: string, high: string, likely: string) => `You believe ${low} to ${high}, most likely ${likely}.`,
  never: (unknown: string, low: string, high: string) =>
    `It does not turn on ‘${unknown}’ anywhere between ${low} and ${high}.`,
  turns: (option: string, unknown: string, more: boolean, value: string) =>
    `It turns to ‘${option}’ if ‘${unknown}’ is ${more ? 'more' : 'less'} than ${value}`,
  jump: ' (a jump: the best way to play changes there)',
  measure: {
    none: (least: string) => `No measurement of one unknown alone is worth as much as ${least} points a match.`,
    best: (unknown: string, times: number, points: string) =>
      `Measure ‘${unknown}’ ${times} times before deciding: worth ${points} points a match.`,
  },
}
