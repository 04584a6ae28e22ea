/** Which unknown turns the answer, where, and what does not matter. */
export const turns = {
  arguments: {
    title: 'Which arguments matter',
    looking: (done: number, all: number) => `Looking for what does not matter: ${done} of ${all} unknowns …`,
    progress: 'Progress of the search',
    printed: (done: number, all: number) =>
      `When this was printed, ${done} of ${all} unknowns had been looked at; whether the others matter is missing here.`,
    stop: 'Stop looking',
    stopped: (done: number, all: number) =>
      `Stopped: ${done} of ${all} unknowns are looked at. Nothing is said about the others.`,
    goOn: 'Go on',
    idle: 'These arguments do not matter',
    idleHow:
      'Whatever the value in the range that you believe, the best option stays the same. They need not be argued about for this choice.',
    lead: (name: string, low: string, high: string, lead: string) =>
      `‘${name}’, anywhere from ${low} to ${high}: the lead stays at least ${lead} points.`,
    thin: (name: string, low: string, high: string) =>
      `‘${name}’, anywhere from ${low} to ${high}: the best stays the same, by less than 0.1 points in places.`,
    noneIdle: (all: number): string =>
      all === 1 ? 'The only unknown named can turn the answer.' : 'Every unknown can turn the answer by itself.',
    turning: 'These turn the answer alone',
    noneTurning: 'No unknown turns the answer by itself; several together may.',
    swingHow: (best: string) =>
      `Each unknown alone, from its low to its high value: how far it moves the lead of ${best}.`,
    otherwise: (likely: string, stands: string) =>
      `With all unknowns at their likely values the lead is ${likely}; the documents as they stand say ${stands}.`,
    figure: 'Lead of the best option, one unknown at a time',
    unknown: 'Unknown',
    low: 'Low',
    atLow: 'Lead at low',
    high: 'High',
    atHigh: 'Lead at high',
    ahead: 'still the best',
    behind: 'another is better',
  },
  turn: {
    title: 'What would turn it',
    unknown: 'Unknown',
    own: 'Unknowns of this trade-off',
    other: 'Other numbers of the robots',
    keep: 'Let the answer name this one',
    loading: 'where it turns',
    lines: 'the lines',
    about: (what: string) => `${what}. All other unknowns are at their likely values.`,
    notOwn: 'This number is no unknown of the trade-off yet: the range looked at is a first guess.',
    figure: (name: string) => `Expected points against ${name}`,
    legend: (letters: string) => `${letters}. The dashed line is where the best option changes.`,
    pays: (option: string, name: string, where: string) => `‘${option}’ pays as long as ‘${name}’ is ${where}`,
    paysSuccess: (option: string, name: string, where: string) =>
      `‘${option}’ pays as long as ‘${name}’ comes to ${where} of tries`,
    above: (value: string) => `more than ${value}`,
    below: (value: string) => `less than ${value}`,
    between: (low: string, high: string) => `between ${low} and ${high}`,
    or: ' or ',
    looked: (low: string, high: string, now: string) => `looked at from ${low} to ${high}, now ${now}`,
    believe: (low: string, high: string, likely: string) => `you believe ${low} to ${high}, most likely ${likely}`,
    never: (option: string, name: string, low: string, high: string) =>
      `‘${option}’ stays the best: it does not turn on ‘${name}’ anywhere between ${low} and ${high}`,
    level: (option: string, name: string, low: string, high: string) =>
      `No value of ‘${name}’ between ${low} and ${high} puts another option ahead of ‘${option}’, but in places the best two are level`,
    jump: 'The best way to play changes at the turning point, so that the points jump there.',
  },
  map: {
    title: 'Two unknowns at once',
    how: 'Which option is best where, all other unknowns at their likely values.',
    x: 'Across',
    y: 'Upwards',
    two: 'A map needs two different unknowns.',
    few: 'Name two unknowns below, and they can be put on a map.',
    draw: 'Draw the map',
    again: 'Draw it again',
    stop: 'Stop',
    drawing: (share: string) => `Planning matches: ${share}`,
    progress: 'Progress of the map',
    stoppedLast: 'Stopped. Shown is what was there by then.',
    stopped: 'Stopped.',
    none: 'Not drawn for these numbers yet. It takes some seconds, grows finer as you watch, and can be stopped.',
    grain: (side: number) => `${side} × ${side} values`,
    fine: (side: number) =>
      `${side} × ${side} values, along the border twice as fine. Planned on a coarse grid of time, which moves the border by as much as some hundredths of a point do.`,
    figure: (x: string, y: string) => `Best option over ${x} and ${y}`,
    likely: 'most likely',
    readX: (name: string) => `Read at: ${name}`,
    reads: (x: string, y: string, option: string, lead: string) => `${x}, ${y}: ‘${option}’ leads by ${lead} points.`,
    roughly: (x: string, y: string, option: string, lead: string) =>
      `${x}, ${y}: ‘${option}’ leads by about ${lead} points …`,
    even: (x: string, y: string) => `${x}, ${y}: even.`,
    touch: 'Touch or click the map, or move the two sliders, to read a place of it.',
    all: (option: string) => `‘${option}’ is the best everywhere on this map.`,
    share: (option: string, share: string) => `‘${option}’ is the best on ${share} of the map`,
    atLikely: (option: string) => `at the most likely values ‘${option}’ is`,
    cell: (letter: string, lead: string) => `${letter} ${lead}`,
    corner: (y: string, x: string) => `${y} \\ ${x}`,
  },
}
