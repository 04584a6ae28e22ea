/** 'How this came about' for the numbers of trade-offs. */
export const explainTradeoffs = {
  reach: {
    title: (option: string) => `Chance to reach points: ${option}`,
    result: (points: string, chance: string) => `${points} points or more in ${chance} of matches`,
    formula:
      'The plan gives the chance of every number of points, exactly. The chances of all numbers that are at least as large are added up.',
    part: (points: string) => `at least ${points} points`,
  },
  regret: {
    title: 'Lost on average, if chosen',
    formula:
      'Each unknown is drawn from what you believe about it, 2,000 times, all options on the same draws. In each draw an option’s points are taken from those of the option that is best there; the mean over all draws is what choosing it loses against knowing better.',
    best: (share: string) => `the best in ${share} of the draws`,
    result: (option: string, lost: string) => `${option}: ${lost} points a match`,
  },
  difference: {
    title: 'One match against another',
    result: (own: string, other: string, less: string) =>
      `‘${own}’ scores less than ‘${other}’ in ${less} of pairs of matches`,
    formula:
      'Of both options the chance of every number of points is known. Every number of the one is set against every number of the other, with the product of their chances, as if the two matches had nothing to do with each other. Each dot stands for one in twenty of these pairs.',
    less: 'Less',
    same: 'The same',
    more: 'More',
    mean: 'Points ahead on average',
    middle: 'Half of the pairs are ahead by less than',
    low: '1 of 10 pairs is ahead by less than',
    high: '9 of 10 pairs are ahead by less than',
  },
  idle: {
    title: 'What does not matter',
    formula:
      'Each unknown alone is moved from its low to its high value, all others at their likely ones, and every option is planned at 17 values of it. Where the same option leads by more than a quarter of a point at each, nothing turns; a closer lead is looked at on the fine grid of time, at 33 values, and every change of the best is closed in on. Two changes between two neighbouring values would not be seen.',
    result: (idle: number, all: number) => `${idle} of ${all} unknowns do not change the answer alone`,
    lead: (lead: string) => `least lead ${lead} points`,
    turns: (where: string) => `turns at ${where}`,
  },
  map: {
    title: (x: string, y: string) => `The map over ‘${x}’ and ‘${y}’`,
    formula:
      'At each of the map’s values both unknowns are set, all others at their likely ones, and every option is planned anew. Between the values the points are taken as straight; the border is where the two best are worth the same. Along it the map is made twice as fine.',
    likely: 'At the most likely values',
  },
  piece: {
    title: (option: string) => `Worth of one more piece: ${option}`,
    result: (points: string, left: string) => `${points} points with ${left} left`,
    formula:
      'The plan knows what every place, load and time left are still worth, on average and played as well as possible. The worth of one more piece is that worth with it in hand less that worth without it, at the same place and time, by the piece. At form 1, and at the room that the goals are expected to have by then.',
    at: (left: string) => `${left} left`,
  },
}
