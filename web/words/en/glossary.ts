/** The words of the trade and of this program, as in the README's table. */
export const glossary = {
  alliance: { word: 'alliance', means: 'the robots that play together in a match' },
  autonomousTeleopEndgame: {
    word: 'autonomous, teleop, endgame',
    means: 'the part without drivers, the part with them, and the last seconds of teleop, in which finishes count',
  },
  belief: {
    word: 'belief',
    means: 'what we do not know about a number, as low, likely and high; not the same as variation from trip to trip',
  },
  breakEven: { word: 'break-even', means: 'the value of an unknown at which another option becomes the best' },
  briefing: {
    word: 'briefing',
    means: 'what is said minutes before a match, in a copy for the coach, one for partners and one for strategists',
  },
  calibration: {
    word: 'calibration',
    means: 'how far what is forecast with 70 % comes true seven times in ten, and so for every chance',
  },
  call: { word: 'call', means: 'the one time left at which a drive coach calls for the finish' },
  captain: { word: 'captain', means: 'the team of an alliance of the playoffs that invites the others' },
  cautiousBound: {
    word: 'cautious bound',
    means:
      'the pressure of a tank that gets no heat all match: each draw costs it 1.4 times as much as one that warms up at once',
  },
  criticality: {
    word: 'criticality',
    means: 'the share of trips in which a stage lies on the longest path, so that it delays the trip',
  },
  cycle: { word: 'cycle', means: 'taking pieces in and scoring them: a collect leg and the score leg after it' },
  design: { word: 'design', means: 'a robot, built or sketched' },
  expectedPoints: { word: 'expected points', means: 'the mean over very many matches' },
  finish: { word: 'finish', means: 'a way to end the match for points, such as hanging' },
  float: { word: 'float', means: 'how much later a stage could end without delaying the trip' },
  form: { word: 'form', means: 'how good a day the robot has: one factor per match on all its times' },
  gain: {
    word: 'gain',
    means:
      'by how much likelier our completed alliance wins with a team than with its replacement, in percentage points',
  },
  goalSource: { word: 'goal, source', means: 'a place where pieces are scored, a place where they are taken in' },
  holdSeconds: {
    word: 'hold seconds (h)',
    means:
      'seconds of holding that one piece on a goal buys: a way to play plans with one such number, a match shows what it was, on average and for one piece more (marginal)',
  },
  fieldLane: { word: 'lane', means: 'the way that one of our robots takes over the field again and again' },
  leaveBy: { word: 'leave-by', means: 'the time left at which driving to a finish becomes the best thing to do' },
  leg: { word: 'leg', means: 'one trip from a spot to a spot: collecting, scoring or finishing' },
  lineup: { word: 'line-up', means: 'which of our robots does what in a match: goals, finish, and whom it marks' },
  load: { word: 'load', means: 'the pieces that a robot holds' },
  look: {
    word: 'look',
    means: 'one match in which somebody watches one robot; worth what it is expected to better our next choice by',
  },
  marking: {
    word: 'marking',
    means: 'to stay with an opponent and slow its drives; meanwhile the marker brings no points',
  },
  mechanism: {
    word: 'mechanism',
    means: 'what gives a stage or the drive its time from motors, wheels, cylinders and distances',
  },
  option: { word: 'option', means: 'a design with a way to play it' },
  pace: { word: 'pace', means: 'a factor on the drive’s time, because drivers do not drive the ideal line' },
  partsShelf: {
    word: 'parts shelf',
    means: 'motors, cylinders, valves, compressors, tanks and wheels with their numbers, each with source and date',
  },
  pickOrder: {
    word: 'pick order',
    means:
      'whom to invite first: by how much likelier the completed alliance wins with a team than with whoever can be expected to be still free at our next turn',
  },
  policy: { word: 'policy', means: 'what is best to do, for every place, load and time left' },
  rankingPoints: {
    word: 'ranking points',
    means: 'what a match counts for in the ranking: for its result, and for each bonus that is earned',
  },
  reading: {
    word: 'reading',
    means: 'a revision of the game with a name: the rules as one sentence of them may be read',
  },
  reduction: { word: 'reduction', means: 'turns of a motor for one turn of what it drives' },
  regret: { word: 'regret', means: 'the points that a choice loses on average against the best choice, had we known' },
  replacement: { word: 'replacement', means: 'the best team that can be expected to be still free at our next turn' },
  round: { word: 'round', means: 'blind guesses of one leg by many people, hidden until it is closed' },
  routine: { word: 'routine', means: 'what a robot does in autonomous: steps with their times, and where it ends' },
  seed: { word: 'seed', means: 'the place in the ranking with which a team goes into the selection' },
  selection: {
    word: 'selection',
    means:
      'how alliances of the playoffs are formed: captains invite in turns, those below a captain who is taken move up',
  },
  setAside: { word: 'set aside', means: 'a team that is not invited for a reason that no number knows' },
  sharedLuck: {
    word: 'shared luck',
    means: 'two line-ups meet the same random numbers match by match, so that what differs comes from the line-ups',
  },
  spot: { word: 'spot', means: 'where the robot’s centre stands when it works at a place' },
  stage: { word: 'stage', means: 'a part of a leg with its own duration, such as seating the piece or spinning up' },
  standardError: {
    word: 'standard error (±)',
    means:
      'how far a number found by playing many matches usually is off by luck, 2 times of 3 at most; four times the matches halve it',
  },
  strength: {
    word: 'strength',
    means: 'how well all ways of a quick sheet are played: a factor on their times and one on their chances of success',
  },
  surrogate: {
    word: 'surrogate',
    means:
      'a robot in a match that counts for its alliance and not for itself, where the teams do not fill the matches evenly',
  },
  swing: { word: 'swing', means: 'by how much an unknown, from low to high, changes the lead of the best option' },
  threat: { word: 'threat', means: 'the opponent whose slowing is worth most to us' },
  winProbability: { word: 'win probability', means: 'the share of very many matches that we win; a tie is no win' },
  worth: { word: 'worth', means: 'the points per match that one second less of a stage brings' },
  workingPressure: {
    word: 'working pressure',
    means: 'the pressure behind the regulator that cylinders are worked out with; below it they are slow and weak',
  },
  worthOfInformation: {
    word: 'worth of information',
    means: 'the expected points that knowing an unknown, or measuring it, would bring',
  },
}
