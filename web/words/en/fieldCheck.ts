const trips = (count: number) => (count === 1 ? 'one trip' : `${count} trips`)
const runs = (count: number) => (count === 1 ? 'one run' : `${count} runs`)
const matches = (count: number) => (count === 1 ? 'one match' : `${count} matches`)
const practice = (count: number) => (count === 1 ? 'one run of practice' : `${count} runs of practice`)

/** Both kinds of runs, as far as there are any. */
const both = (played: number, practised: number) =>
  [...(played > 0 ? [matches(played)] : []), ...(practised > 0 ? [practice(practised)] : [])].join(' and ') || 'no runs'

/** Model against field. */
export const fieldCheck = {
  title: 'Model against field',
  intro:
    'What a design says its trips take, beside what was timed of a robot: from the end of one trip to the end of the next, in matches and in practice.',
  what: 'robots and designs',
  trouble: 'Robots and designs could not be loaded',
  whatCompared: 'the comparison',
  notCompared: 'The design could not be put against the field',
  noTimelines: 'No trip has been timed yet',
  noTimelinesHow:
    'As soon as somebody has tapped a match or a run of practice on the phone, with pieces collected and placed, the robot can be put against its design here.',
  noDesign: 'This game has no design yet',
  noDesignHow: 'The field is compared with what a design says of its trips, stage by stage.',
  toDesigns: 'Designs',
  noRuns: 'No such run of this robot was timed',
  noRunsHow: 'Choose other runs above, or time a match or a run of practice on a phone.',
  noTrips: 'No trip of these runs can be compared',
  noTripsHow:
    'A trip counts from the placement before it to its own, at places that the design goes to. The first one of a match starts elsewhere and is left out.',
  robot: 'Robot on the field',
  design: 'Design',
  asNow: 'As it is now',
  asDecided: (decision: string) => `As it was decided on: ${decision}`,
  robotThen: (robot: string, decision: string) => `${robot}, as in ‘${decision}’`,
  frozenIn: (robot: string) => `${robot} as it was when this was decided, whatever became of the design since:`,
  runs: 'Runs',
  runsOf: { all: 'Matches and practice', match: 'Matches only', practice: 'Practice only' },
  teamChoice: (team: string, name: string, played: number, practised: number) =>
    `${team}${name === '' ? '' : ` ${name}`}: ${both(played, practised)}`,
  signedSeconds: (value: string) => `${value}\u00a0s`,
  interval: (mean: string, low: string, high: string) => `${mean} [${low}, ${high}]`,
  change: (percent: string) => `${percent}\u00a0%`,
  changeWithin: (change: string, low: string, high: string) => `${change} [${low}, ${high}]`,
  says: (model: string, field: string) => `The model says ${model} a trip, the field says ${field}.`,
  saysWithin: (model: string, field: string, low: string, high: string) =>
    `The model says ${model} a trip, the field says ${field}, with 95 % between ${low} and ${high}.`,
  longer: (mean: string, low: string, high: string) =>
    `Trips on the field take ${mean} longer; with 95 % between ${low} and ${high}.`,
  shorter: (mean: string, low: string, high: string) =>
    `Trips on the field take ${mean} less; with 95 % between ${low} and ${high}.`,
  maybeChance: (mean: string, low: string, high: string) =>
    `The difference of ${mean} may be chance: with 95 % it lies between ${low} and ${high}.`,
  oneRun: 'All trips are of one run, so nothing can be said about how the next one will differ.',
  halves: { collecting: 'collecting', scoring: 'scoring' },
  mostIn: (part: string, whole: string, half: string) => `${part} of the ${whole} are in ${half}.`,
  bothWays: (collecting: string, scoring: string) => `Collecting brings ${collecting}, scoring ${scoring}.`,
  ofTimed: (count: number) => `Only ${trips(count)} had collecting timed, and the split is of those.`,
  from: (tripCount: number, runCount: number) => `From ${trips(tripCount)} of ${runs(runCount)}.`,
  tripsTitle: 'Each trip over what the design predicts',
  run: 'Run',
  seconds: 'Seconds',
  seenToEnd: 'Seen to its end',
  yes: 'yes',
  no: 'no, it lasted longer',
  practiceRun: (driver: string | null, number: number) =>
    driver === null ? `Practice, run ${number}` : `Practice, ${driver}, run ${number}`,
  fits: (p: string, distance: string) =>
    `The spread fits: played again and again, the design itself lies as far off in ${p} of all cases (Kolmogorov–Smirnov distance ${distance}).`,
  fitsNot: (p: string, distance: string) =>
    `This is not what the design predicts: played again and again, it lies as far off in only ${p} of all cases (Kolmogorov–Smirnov distance ${distance}).`,
  compared: (team: string, design: string, kind: string) => `Team ${team} against the design ${design}. ${kind}.`,
  changed: (times: number) =>
    `The robot was changed ${times === 1 ? 'once' : `${times} times`} during the event: earlier runs are of the robot as it was.`,
  howCame: 'How this came about, and what was left out',
  howFirst:
    'A trip ends with its last placement; collecting lasts until the last piece is collected. The first trip of a match starts elsewhere and is left out. Seconds in which the robot stood, defended or was out of sight are taken off.',
  howSpots:
    'Where exactly a robot stood is hardly ever recorded: of the ways from one place to the next the design takes the one that brings most hits a second.',
  howErrors:
    'Intervals come from how whole matches and runs differ, because trips of one match are alike. Taps come some tenths of a second late, which counts as spread.',
  cutOff: (count: number) =>
    `${trips(count)} ended with the match or out of sight: known to have lasted longer, and counted as that.`,
  beyond: 'Some trips outlasted the longest one that was seen to its end, so the field’s mean is rather too short.',
  leftOut: {
    noGoal: (count: number) => `Left out: ${trips(count)} without a goal.`,
    mixed: (count: number) => `Left out: ${trips(count)} with pieces of several sources or to several goals.`,
    cannotCollect: (count: number) => `Left out: ${trips(count)} from sources where the design can not collect.`,
    cannotScore: (count: number) => `Left out: ${trips(count)} to goals where the design can not score.`,
    tooMany: (count: number) => `Left out: ${trips(count)} with more pieces than the design carries.`,
    noWay: (count: number) => `Left out: ${trips(count)} for which the design finds no way.`,
  },
  sourceUnknown: (count: number) =>
    `Of ${trips(count)} nobody noted the source: the design’s quickest one is taken for it.`,
  defended: (count: number) => `${trips(count)} ended while the robot was defended; the design knows no defence here.`,
  dots: {
    label: (ended: number, cutOff: number) =>
      `${ended} trips seen to their end and ${cutOff} cut off, by their seconds, over the distribution that the design predicts`,
    model: 'Dashed: as many as the design predicts. Filled: seen to its end. Empty: cut off there, and lasted longer.',
    axis: 'seconds a trip',
  },
  legs: 'Leg by leg',
  leg: 'Leg',
  wholeTrip: 'Whole trip',
  trips: 'Trips',
  byModel: 'Model',
  onField: 'Field, 95 %',
  difference: 'Difference',
  brings: 'Brings to a trip',
  legsHow:
    'The mix of legs is the field’s in both. The last column is what a leg brings to the difference of an average trip: all of them together are the whole.',
  bars: {
    model: 'Model',
    field: 'Field, with its 95 %',
    row: (name: string, model: string, field: string) => `${name}: model ${model}, field ${field}`,
  },
  drivers: 'By driver, from run to run',
  driver: 'Driver',
  noDriver: 'Driver not noted',
  runCount: 'Runs',
  doubling: 'After twice as many runs',
  fewRuns: 'needs four runs',
  practice: {
    title: 'Field time to model time, run by run',
    row: (name: string, count: number) => `${name}: ${runs(count)}`,
    axis: 'number of the run; the dashed line is the design',
  },
  practiceHow:
    'The curve is the power law of practice: every doubling of the runs changes trip times by the same share. Where its interval holds 0 %, practice has not shown yet. Who drove is noted with each run of practice; of matches a lead can add it.',
  drove: {
    title: 'Who drove in matches?',
    how: 'No scout can see it, so note it here. Empty: not noted. Only the comparison by driver uses it; nicknames do.',
    keep: 'Keep it',
    kept: 'Kept.',
    undo: 'Undo',
    conflict: 'Somebody has changed the event meanwhile: look at it again and keep it once more.',
  },
  back: {
    title: 'Write it back into a copy',
    intro:
      'Choose for each leg the stage that takes the difference. It is moved until the leg takes as long as on the field; a stage beside the drive has to outlast it first. The design stays as it is.',
    noLegs: 'No trip had its collecting timed, so the difference can not be given to a leg.',
    leg: (name: string, difference: string) => `${name}: ${difference}`,
    trips: (tripCount: number, runCount: number) => `${trips(tripCount)}, ${runs(runCount)}`,
    leave: 'Leave it as it is',
    wholeLeg: 'The whole leg',
    stage: (name: string, seconds: string) => `${name}: ${seconds}`,
    canNot: (name: string) => `${name}: can not make up for it`,
    chooseFirst: 'Choose a stage to see what it does to the points of a match.',
    way: 'Way to play',
    planning: 'Planning both …',
    notPlanned: (why: string) => `The points could not be computed: ${why}`,
    points: (before: string, after: string, change: string) =>
      `Expected points of a match: ${before} by the design, ${after} with these times (${change}).`,
    name: 'Name of the copy',
    copyName: (name: string) => `${name}, as timed`,
    noName: 'Please give the copy a name.',
    save: 'Keep the copy',
    saved: 'Kept as a design of its own:',
    mayNot: 'Leads and mechanism leads can keep a copy.',
    sameToday: 'Would we decide the same today? Decisions that this design was part of, computed again with the copy:',
    noDecision: 'No decision record has this design in it.',
  },
  note: (team: string, event: string, played: number, practised: number, tripCount: number) =>
    `Written back from the field: team ${team} at ${event}, ${both(played, practised)}, ${trips(tripCount)}.`,
  noteShift: (leg: string, stage: string, seconds: string) => `${leg}, ${stage}: ${seconds}`,
  noteOf: 'A copy of',
  again: {
    label: 'Design in its place',
    newest: 'None: every design as it is now',
    copy: (name: string, team: string, played: number, practised: number) =>
      `${name} (team ${team}, ${both(played, practised)})`,
    help: 'A copy that was written back from the field can stand in for its design.',
    stands: (copy: string, design: string) => `Would we decide the same today? ${copy} stands in for ${design}:`,
    notLoaded: 'Designs could not be loaded',
  },
}
