/** 'How this came about' for what the first page does not show: the answer's numbers, calls and edits. */
export const explainNumbers = {
  call: {
    title: (option: string) => `The call: ${option}`,
    result: (at: string, points: string) => `leave with ${at} left: ${points} points a match`,
    formula:
      'The whole match is planned for one time after another with the rule ‘no finish before it, and the best finish at the first decision after it’. The time with the most expected points is the call. Three seconds earlier and later show how exactly it has to be called. To call at a time of your own: give the design a way to play that leaves for its finish then, and set it beside this one.',
    at: (time: string) => `Called with ${time} left`,
    loses: (points: string) => `${points} points less`,
    whenItPays: 'Without a call, decided anew at every moment',
  },
  leaveBy: {
    title: (option: string) => `Leave by: ${option}`,
    result: 'when leaving for the finish becomes the best thing to do',
    formula:
      'From each place and load, the finish is compared with every other trip, each with the time that it takes and what the time after it is still worth. ‘Best from’ is the first time left, as it runs down, at which the finish is worth most; ‘at the latest’ is the least at which leaving still brings no more than half a point less.',
    otherwise:
      'To have other times: change the finish’s time or chance in the design; or set your own, with the reason, under ‘Own numbers’ on this page.',
    toOwn: 'To the own numbers',
    forgone: (points: string) => `the best other trip would be worth ${points} points there`,
  },
  turn: {
    title: (unknown: string) => `Where ‘${unknown}’ turns the answer`,
    formula:
      'All other unknowns stay at their likely values. The options are planned at 33 values of this one, from its low to its high; between two neighbours with different best options, the value where both are worth the same is closed in on. The lines are computed on a coarser grid of time, which moves them by hundredths of a point.',
    low: (value: string) => `At the low value, ${value}`,
    likely: (value: string) => `At the likely value, ${value}`,
    high: (value: string) => `At the high value, ${value}`,
    crossing: (value: string) => `Where it turns, ${value}`,
  },
  ahead: {
    title: 'Ahead in a single match',
    formula:
      'Of both options the chance of every number of points is known. Every pair of numbers is compared, with the product of their chances, as if the two matches had nothing to do with each other; equal numbers count half.',
  },
  knowing: {
    title: 'Worth of knowing before deciding',
    result: (points: string) => `${points} points a match, if everything were known`,
    formula:
      'In each of the 2,000 draws, the option that is best there is compared with the one that is best on average; the mean of what it gains is the worth of knowing everything. For one unknown alone, the difference between the options is first smoothed over its values. What is below its own standard error is shown as 0. The parts do not add up: what two unknowns tell together can be more, or less.',
    error: (points: string) => `standard error ${points}`,
  },
  measuring: {
    title: 'Worth of measuring',
    formula:
      'Measuring does not make an unknown exact: its draws are drawn together towards their mean as far as that many measurements, with the spread of one, leave it open. Then the same smoothed difference as for knowing it exactly is taken.',
    times: (unknown: string, count: number) => `${unknown}: ${count} times`,
    spread: (unknown: string) => `${unknown}: spread of one measurement`,
  },
  swing: {
    title: 'How far each unknown moves the lead',
    result: (lead: string) => `${lead} points a match with all unknowns at their likely values`,
    formula:
      'One unknown at a time is set to its low and then to its high value, all others to their likely ones, and every option is planned anew. Shown is the lead of the option that is best.',
    range: (low: string, high: string) => `from ${low} to ${high}`,
  },
  gain: {
    title: 'What the edit brings',
    formula:
      'The same way to play with the robot as it stands on the screen, less with the robot as it is saved. Until the exact plan has caught up, a plan on a coarser grid of time says by how much the points moved.',
    now: 'As it stands here',
    saved: 'less as it is saved',
    change: 'Change',
  },
  worth: {
    title: 'What a second of each stage is worth',
    result: 'points a match for one second less',
    formula:
      'Every time of the stage is made half a second shorter (or half of its mean, where that is less), in all trips that have the stage, and the match is planned anew; then as much longer. The difference of the two, by the second, is its worth. Stages with float are worth little: others are waited for.',
    takes: (time: string) => `takes ${time}`,
  },
}
