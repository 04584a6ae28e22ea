type Noun = 'source' | 'goal' | 'finish'

/** What a plan and its legs refuse, in English. */
export const planSentences = {
  noRoutine: (of: { routine: string }) => `the robot has no routine '${of.routine}'`,
  tooManyNodes: (of: { most: number }) => `the plan would need more than ${of.most} places and loads`,
  tooManyStates: (of: { states: number; most: number }) =>
    `the plan would need ${of.states} states, more than ${of.most}: fewer loads, spots or capacities would help`,

  legFromNowhere: (of: { id: string }) => `the game has no start or spot with the id '${of.id}'`,
  legToNowhere: (of: { noun: Noun; id: string }) => `the game has no ${of.noun} '${of.id}'`,
  legToNoSpot: (of: { place: string; spot: string }) => `'${of.place}' has no spot '${of.spot}'`,
  canNot: (of: { what: 'collect' | 'finish'; id: string }) => `the robot can not ${of.what} at '${of.id}'`,
  noEntryFor: (of: { entry: number; goal: string }) => `the robot has no entry ${of.entry} for goal '${of.goal}'`,
  notFromSpot: (of: { entry: number; spot: string }) => `entry ${of.entry} is not played from spot '${of.spot}'`,

  twiceInNetwork: (of: { stage: string }) => `stage '${of.stage}' stands twice in the network`,
  waitsForNothing: (of: { stage: string; before: string }) =>
    `stage '${of.stage}' waits for '${of.before}', which is not there`,
  loopInNetwork: (of: { stage: string }) => `stage '${of.stage}' waits for itself: the network has a loop`,
} as const
