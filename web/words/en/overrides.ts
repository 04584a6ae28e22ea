/** Numbers that somebody sets in place of computed ones. */
export const overrides = {
  title: 'Own numbers',
  intro:
    'Where you know better than the model, set your own number in place of the computed one, with the reason. It is marked wherever the answer stands, and taken back with one tap.',
  none: 'No number is overridden.',
  contains: (count: number) =>
    count === 1 ? 'Contains one overridden number.' : `Contains ${count} overridden numbers.`,
  mark: 'own number',
  computed: 'computed',
  own: 'own',
  pointsOf: (option: string) => `Expected points of ‘${option}’`,
  legOf: (robot: string, leg: string) => `${robot}, whole time: ${leg}`,
  collect: (place: string) => `collect at ${place}`,
  score: (place: string, entry: number) => (entry === 0 ? `score at ${place}` : `score at ${place}, way ${entry + 1}`),
  finish: (place: string) => `finish at ${place}`,
  points: (value: string) => `${value} points`,
  range: (low: string, likely: string, high: string) => `${low} – ${likely} – ${high}`,
  because: (reason: string, who: string, when: string) => `${reason} (${who}, ${when})`,
  line: (name: string, computed: string, own: string, reason: string, who: string) =>
    `${name}: computed ${computed}, set to ${own}: ${reason} (${who})`,
  idle: 'There is no such number any more, so that it changes nothing.',
  computing: 'computing …',
  remove: 'Take back',
  removeOf: (name: string) => `Take back: ${name}`,
  removed: (name: string) => `Taken back: ${name}.`,
  undo: 'Undo',
  closes: (names: string) =>
    `These unknowns are about times that are overridden, and change nothing meanwhile: ${names}.`,
  add: {
    title: 'Override a number',
    what: 'Which number',
    already: 'Everything that can be overridden here is overridden.',
    points: 'Own expected points',
    likely: 'Own time, likely (s)',
    low: 'Low (s), if it varies',
    high: 'High (s), if it varies',
    reason: 'Why you know better',
    who: 'Who says so',
    button: 'Set it',
    reasonNeeded: 'Please say why; without a reason nobody can check it.',
    whoNeeded: 'Please say who says so.',
    both: 'Give low and high, or neither.',
    order: 'Low must not be above likely, nor likely above high.',
    pointsMean:
      'All outcomes of the option are moved by as much, so that its mean is your number. How it varies from match to match, and how it hangs on the unknowns, stays computed.',
    legMean:
      'The leg takes this time, driving included, wherever it starts; its stages, and what you believe about them, count no more. Computed is its mean from the places that it usually starts from.',
  },
  record: {
    title: 'Overridden numbers',
    what: 'Number',
    computed: 'Computed',
    own: 'Own',
    why: 'Why, and who says so',
    stays: (option: string) =>
      `The points of ‘${option}’ are overridden: they stay, whatever its documents would make of them.`,
  },
}
