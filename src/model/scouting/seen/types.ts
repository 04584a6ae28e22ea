/** What records say of one robot in one match, made into numbers that can be added up. Times in seconds. */

export interface GoalCount {
  scored: number
  missed: number
}

export type GoalCounts = { [goal: string]: GoalCount }

/** The time between the ends of two successive trips, without what the robot stood, defended or was out of sight. */
export interface Cycle {
  seconds: number
  /** False: the trip was not over when it was last seen, so that it takes longer than this. */
  ended: boolean
  /** Of them until the last piece was collected; null where nobody noted a piece collected. */
  collecting: number | null
  /** 1; less where several records of the match are averaged. */
  weight: number
}

/** What a trip placed, hit or miss. */
export interface Trip {
  goals: GoalCounts
  /** Of teleop, by which the robot has what it began with. */
  first: boolean
  weight: number
}

/** The trip with what the robot held when teleop began: it starts elsewhere, so it is no cycle. */
export interface FirstTrip {
  /** Since teleop began. */
  seconds: number
  pieces: number
  /** Whether it held them from the start; null where nobody noted pieces collected. */
  preloaded: boolean | null
}

/** When it departed for its finish, as time left; `never`: it played to the end; `unknown`: it did, and nobody said when. */
export type Departure = number | 'never' | 'unknown'

/** Of teleop, where it was watched. */
export interface SeenTeleop {
  /**
   * Seconds seen, less lost time, defence played, and what follows a stop or the departure; where the departure is not
   * known, those up to the buzzer.
   */
  active: number
  goals: GoalCounts
  departed: Departure
  trips: Trip[]
  cycles: Cycle[]
  first: FirstTrip | null
  /** Pieces collected by source. */
  sources: { [source: string]: number }
  defence: SeenDefence
}

export interface SeenDefence {
  /** Seconds that it defended. */
  played: number
  /** Seconds that it was defended within its active ones, and pieces that it tried meanwhile; null where no times were noted. */
  received: { seconds: number; attempts: number; freeSeconds: number; freeAttempts: number } | null
}

export interface Seen {
  /** Ids of the records behind it. */
  records: string[]
  absent: boolean
  /** Stopped and did not run again. */
  stopped: boolean
  /** By goal, in autonomous; null where nobody watched it. */
  autonomous: GoalCounts | null
  left: boolean | null
  routine: string | null
  startSpot: string | null
  /** Null where it was absent or nobody watched. */
  teleop: SeenTeleop | null
  /** What it achieved, null for nothing; undefined where nobody said. */
  finish: { attempted: string | null; achieved: string | null } | undefined
  fouls: { minor: number; major: number } | null
}
