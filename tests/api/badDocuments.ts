import type { Path } from '../../src/model/errors.ts'

/** A body may be anything, so what is done to it is not held to the types. */
// biome-ignore lint/suspicious/noExplicitAny: see above
type Anything = any

export interface BadDocument {
  what: string
  at?: Path
  change(body: Anything): void
  /** 400 where it is not said. */
  status?: number
  /** Where the answer points; where the change was made if it is not said. */
  path?: Path
  words: RegExp
}

/** Puts a value at a path of the request; undefined takes away what stands there. */
function put(
  what: string,
  at: Path,
  value: unknown,
  told: Pick<BadDocument, 'words' | 'status' | 'path'>,
): BadDocument {
  return {
    what,
    at,
    change(body) {
      const parent = at.slice(0, -1).reduce((part, key) => part[key], body)
      if (value === undefined) delete parent[at.at(-1)!]
      else parent[at.at(-1)!] = value
    },
    ...told,
  }
}

const robot = ['option', 'robot']
const drive = [...robot, 'drive']
const lower = [...robot, 'collect', 'slip', 'stages', 0]
const take = [...robot, 'collect', 'slip', 'stages', 1]
const drop = [...robot, 'score', 'pier', 0, 'stages', 0]
const whole = [...robot, 'score', 'mast', 0, 'whole']
const clock = ['game', 'clock']
const obstacles = ['game', 'field', 'obstacles']
const mast = ['game', 'goals', 1, 'spots', 0, 'at']
const dock = ['game', 'finishes', 0, 'spots', 0, 'at']

const many = Array.from({ length: 10_001 }, () => 5)
const crossing = [
  [4, 0.5],
  [4.5, 2],
  [4.5, 0.5],
  [4, 2],
]

const times = [
  put('a negative time', [...take, 'duration', 'low'], -0.5, { words: /low must be at least 0, got -0\.5/ }),
  put('a missing time', [...take, 'duration', 'likely'], undefined, { words: /likely is missing/ }),
  put('a range in the wrong order', [...take, 'duration', 'high'], 0.9, {
    words: /high must be at least likely \(1\), got 0\.9/,
  }),
  put('a spread below 1', [...drop, 'duration', 'spread'], 0.9, { words: /spread must be at least 1, got 0\.9/ }),
  put(
    'a spread that leaves everything open',
    [...drop, 'duration'],
    { kind: 'lognormal', median: 60, spread: 3 },
    {
      path: [...drop, 'duration', 'spread'],
      words: /spread must be less for a median of 60, got 3: one in a thousand would take over 600 s/,
    },
  ),
  put('two measured times', [...whole, 'seconds'], [4, 5], { words: /at least 3 entries, got 2/ }),
  put('too many measured times', [...whole, 'seconds'], many, { words: /at most 10000 entries, got 10001/ }),
  put(
    'an unknown kind of duration',
    [...lower, 'duration'],
    { kind: 'normal', mean: 1, sd: 1 },
    {
      path: [...lower, 'duration', 'kind'],
      words: /kind must be "fixed" or "range" or "lognormal" or "samples", got "normal"/,
    },
  ),
  put('a pace below 1', [...drive, 'pace', 'low'], 0.95, { words: /pace .* at least 1, got 0\.95/ }),
  put('a clock off the grid', [...clock, 'teleop'], 60.05, {
    words: /teleop must be a multiple of 0\.1 s, got 60\.05/,
  }),
  put('a year of teleop', [...clock, 'teleop'], 31_536_000, { words: /at most 600, got 31536000/ }),
  put(
    'a clock without length',
    clock,
    { auto: 15, pause: 0, teleop: 0, endgame: 0 },
    {
      path: [...clock, 'teleop'],
      words: /teleop must be longer than 0 s, got 0/,
    },
  ),
]

const networks = [
  put('a network with a loop', [...lower, 'after'], ['take'], {
    words: /“lower” waits for itself: lower after take after lower/,
  }),
  put('an unknown stage', [...take, 'after', 1], 'raise', { words: /“take” waits for “raise”/ }),
  put('a stage called drive', [...drop, 'id'], 'drive', { words: /can not be called “drive”/ }),
  put(
    'both forms of a trip at once',
    [...robot, 'finish', 'davit', 'whole'],
    { kind: 'fixed', seconds: 4 },
    {
      words: /"whole" is not a field/,
    },
  ),
]

const numbers = [
  put('a billion pieces in hand', [...robot, 'carries', 'buoy'], 1e9, {
    words: /buoy must be at most 100, got 1000000000/,
  }),
  put('a probability above 1', [...robot, 'score', 'pier', 0, 'success'], 1.01, {
    words: /success must be at most 1, got 1\.01/,
  }),
  put('a probability below 0', [...robot, 'reliability', 'stops'], -0.1, {
    words: /stops must be at least 0, got -0\.1/,
  }),
  put('text where a number belongs', [...drive, 'topSpeed'], '3.5', { words: /topSpeed must be a number, got "3\.5"/ }),
  put('null where a number belongs', [...drive, 'topSpeed'], null, { words: /topSpeed must be a number, got null/ }),
  put('a list where an object belongs', clock, [15, 3, 60, 20], { words: /clock must be an object, got a list of 4/ }),
  put('a point with three numbers', ['game', 'starts', 0, 'at'], [1, 2, 0], { words: /at most 2 entries, got 3/ }),
]

const names = [
  put('an unknown field deep inside', [...drive, 'colour'], 'red', {
    words: /"colour" is not a field that is known here/,
  }),
  put('an unknown field of the request', ['hurry'], true, { words: /"hurry" is not a field/ }),
  put('an unknown format', ['game', 'format'], 2, { words: /format must be 1, the only one known here, got 2/ }),
  put('an id that every object has already', [...robot, 'score', 'constructor'], [], {
    words: /"constructor" can not be used as an id/,
  }),
  put('a question that is none', ['with'], ['everything'], {
    path: ['with', 0],
    words: /with\[0\] must be "call" or "worth", got "everything"/,
  }),
  put('a grid that is not offered', ['step'], 0.01, { words: /step .*got 0\.01/ }),
]

const places = [
  put('a spot inside an obstacle', mast, [7.75, 4.5], { status: 422, words: /Mast.*Wall B/ }),
  put('a spot in a corner where no robot fits', dock, [0.1, 0.1], { status: 422, words: /Dock.*border/ }),
  put('a spot outside the field', mast, [6, 60], { words: /outside the field of 12 m × 6 m, at 6, 60/ }),
  put('an outline that crosses itself', [...obstacles, 0, 'outline'], crossing, { words: /“Wall A”.*cross/ }),
  put('obstacles that do not map onto each other', [...obstacles, 1, 'outline', 0, 0], 8.01, {
    path: [...obstacles, 0],
    words: /“Wall A” lies on no obstacle/,
  }),
]

/** A wall right across the field, and its image. */
const unreachable: BadDocument = {
  what: 'an unreachable place',
  change({ game }) {
    for (const [index, x] of [4, 7.5].entries()) {
      const right = x + 0.5
      game.field.obstacles[index].outline = [
        [x, 0],
        [right, 0],
        [right, 6],
        [x, 6],
      ]
    }
  },
  status: 422,
  path: obstacles,
  words: /no way from .* to /,
}

const tooLarge: BadDocument = {
  what: 'a table beyond the budget',
  change({ game, option }) {
    game.clock.teleop = 600
    for (const id of ['a', 'b', 'c']) {
      const spots = [{ id: `${id}.1`, at: [6, 2] }]
      game.goals.push({ ...structuredClone(game.goals[0]), id, name: id, capacity: 60, spots })
      option.robot.score[id] = [{ ...structuredClone(option.robot.score.pier[0]), spots: 'any' }]
      option.role.goals.push(id)
    }
  },
  status: 422,
  path: [],
  words: /states, more than/,
}

/** What a plan's documents can get wrong: one change each, and what the answer must say. */
export const rows: BadDocument[] = [...times, ...networks, ...numbers, ...names, ...places, unreachable, tooLarge]
