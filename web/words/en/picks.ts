type Kind = 'accepts' | 'declines' | 'withdraws' | 'joins'

/** Pick order and the selection as it runs. */
export const picks = {
  title: 'Picks',
  loading: 'the selection',
  theOrder: 'the pick order',
  notLoaded: 'The selection could not be loaded',
  notComputed: 'The order could not be worked out',
  tooFewTeams: 'There are too few teams for alliances',
  tooFewTeamsHow: 'Six teams at least: enter the event’s teams first.',
  us: 'We are',
  chooseUs: 'Choose a team',
  keptSince: (when: string) => `The server can not be reached: worked out from what was known on ${when}.`,
  askingSince: (when: string) => `Worked out from what was known on ${when}; the server is being asked for more.`,
  asOf: (when: string) => `Worked out from what was known on ${when}.`,
  waiting: (count: number) =>
    count === 1
      ? 'One line is on this device alone; it is sent as soon as the server answers.'
      : `${count} lines are on this device alone; they are sent as soon as the server answers.`,
  clash: 'Somebody else was quicker',
  clashHow: 'What others wrote stands below already. Yours is not written yet:',
  writeAfter: 'Write what still fits behind it',
  discard: 'Discard',
  lines: {
    begins: 'A selection begins',
    undoes: 'Undo',
    aside: 'A team set aside, or not any more',
    order: 'Our own order',
  },

  calling: 'The selection',
  turn: (alliance: number, captain: string, round: number) =>
    `Alliance ${alliance} with captain ${captain} invites, round ${round}`,
  ourTurn: (alliance: number, round: number) => `Our turn: alliance ${alliance}, round ${round}`,
  over: 'The selection is over',
  whatIsCalled: 'What is called out',
  kinds: { accepts: 'Accepts', declines: 'Declines', withdraws: 'Is not there' },
  names: {
    accepts: 'Teams that can be invited: a tap says that it accepts',
    declines: 'Teams that can be invited: a tap says that it declines',
    withdraws: 'Teams that can be invited: a tap says that it is not there',
  },
  said: {
    accepts: (team: string) => `${team} accepted.`,
    declines: (team: string) => `${team} declined.`,
    withdraws: (team: string) => `${team} is not there.`,
    joins: (team: string) => `${team} joined an alliance.`,
  } satisfies Record<Kind, (team: string) => string>,
  joining: 'A robot can not play: another team joins',
  joins: 'Alliance that it joins',
  namesJoining: (alliance: number) => `Teams that were left: a tap lets one join alliance ${alliance}`,
  undo: 'Undo',
  unbegin: 'Take the beginning back',
  surelyUnbegin: 'The selection has not begun then, for everybody who looks.',
  keep: 'Leave it',

  alliances: 'Alliances',
  alliance: 'Alliance',
  captain: 'Captain',
  partners: 'Partners, in their order',
  ours: 'ours',
  isOnTurn: 'on turn',
  nobody: 'nobody',
  declined: (teams: string) => `Declined, and not invited again: ${teams}.`,
  withdrawn: (teams: string) => `Not there: ${teams}.`,

  order: 'Pick order',
  ourAlliance: (teams: string) => `Our alliance: ${teams}.`,
  alone: (team: string) => `Seen from ${team}, alone so far.`,
  asLastCaptain:
    'By the present ranks we are no captain: this is worked out as if we became the last one. What to say to a captain who invites us stands here once the selection runs.',
  noCaptain:
    'As it stands we are no captain: the order is what we would go by if we had the next turn of all who are left. What to say to a captain who invites us stands above, while another alliance is on turn.',
  tooFewToSimulate: 'Nothing to simulate: as it stands we would be fewer than three robots.',
  against: (team: string, { captain, free }: { captain: boolean; free: boolean }) => {
    if (!free) return `Every team will probably be taken: gains are against ${team}, the last of the order.`
    return captain
      ? `Gains are against ${team}, whom we can expect to be still free at our next turn.`
      : `Gains are against ${team}, the best team that we can expect nobody to take.`
  },
  need: (part: string, points: string, chance: string) =>
    `We lack ${part}: ${points} points a robot less than the others (${chance} sure).`,
  autonomous: 'autonomous',
  finishing: 'a finish',
  refine: 'Refine by simulated matches',
  refined: 'Refine again',
  refining: 'Simulated so far',
  stop: 'Stop',
  reordering: 'Working out…',
  rough: 'A first, rough order; the exact one follows in a moment.',
  states: { running: 'Simulating…', stopped: 'Stopped; what was simulated is kept.', done: 'Refined.' },
  noChoices: 'There is nobody whom we can invite.',
  orderTable: 'Pick order: table',
  place: 'Place',
  team: 'Team',
  gain: 'Gain in the chance to win, points of a hundred',
  better: 'Better than the next',
  even: 'even',
  stillFree: 'Still free at our next turn',
  answers: 'Brings what we lack',
  takeTeam: (team: string) => `${team}: invite, and it accepts`,
  percentagePoints: (value: string) => `${value}`,
  gainTold: (mean: string, low: string, high: string) => `${mean} (${low} to ${high})`,
  winTold: (win: string, error: string) => `win ${win}, ± ${error}`,
  orderHow: (simulated: number) =>
    `Gain: how much likelier our completed alliance wins a match of the playoffs than with the team of the line above. The bar holds 80 % of what is not known of the teams. That others invite by points they expect is an assumption. ${
      simulated > 0 ? `The first are simulated, up to ${simulated} matches each.` : 'Not simulated one by one yet.'
    } ± is the luck of the simulation.`,

  ownOrder: 'Our own order',
  noOwnOrder: 'Nothing is changed by hand: this is the computed order. What no number knows can move a team.',
  costsNothing: 'Compared with the computed order this costs nothing.',
  dearest: (team: string, before: string, by: string) =>
    `The dearest choice: ${team} before ${before} costs ${by.replace(/^\+/, '')} points of a hundred.`,
  cost: (before: string, mean: string, low: string, high: string) =>
    `before ${before} costs ${mean.replace(/^\+/, '')} of a hundred (${low} to ${high})`,
  computedPlace: (place: number) => `computed: ${place}`,
  up: (team: string) => `${team} up`,
  down: (team: string) => `${team} down`,
  changeOrder: 'The order, to be changed',
  keepOrder: 'Keep this order',
  asComputed: 'Back to the computed order',

  offer: (alliance: number) => `If alliance ${alliance} invites us`,
  offerHow: 'Accept or decline, by the chance to win the event: worth asking before a captain looks this way.',
  compare: 'Compare accepting and declining',
  comparing: 'Playing selection and playoffs on…',
  betterAccept: 'Accepting is better',
  betterDecline: 'Declining is better',
  noDifference: 'No difference that could be told',
  offerTold: (accept: string, decline: string, difference: string) =>
    `Chance to win the event: ${accept} when we accept, ${decline} when we decline (difference ${difference} of a hundred).`,
  offerError: (low: string, high: string) => `The difference lies between ${low} and ${high} by the luck of the runs.`,
  offerPlays: (plays: string) => `Having declined, we play in ${plays} of the ways it can go on.`,
  offerAssumes:
    'Others are taken to invite by points that they expect, and whoever is invited to accept. The event’s rules say what declining means.',

  aside: 'Set aside',
  asideHow: 'Whom we do not invite for a reason that no number knows. Shown only as long as the button is held.',
  hold: 'Hold to see',
  noneAside: 'Nobody is set aside.',
  asideTeam: 'Team',
  asideReason: 'Reason',
  noReason: 'Say why, in a word or two.',
  setAside: 'Set aside',
  bringBack: 'Invite again',

  begin: 'Begin the selection',
  beginHow: 'What was announced. From then on everybody who looks sees the same selection.',
  allianceCount: 'Alliances',
  size: 'Robots of an alliance',
  serpentine: 'Rounds go back and forth',
  captainsInvitable: 'Captains further down may be invited in the first round',
  mayBeCaptain: 'Whoever declined may still be captain',
  seeds: 'Teams, best seeded first',
  seedsHow: 'From the ranking as it is known here. The official order counts: correct it where it differs.',
  beginNow: 'Begin',
  rulesDecide: 'The rules of the event decide; what stands here is common practice.',
  unknownTeam: (team: string) => `“${team}” is not among the teams of the event.`,
  twice: (team: string) => `Team ${team} is named twice.`,
  tooFew: (seeds: number, alliances: number) =>
    `${seeds} teams are too few for ${alliances} alliances, which have two robots at least.`,
}
