/** How an observed robot plays: not by a plan, but as the event showed it. Shares need not sum to 1; they are weighed against each other. */
export interface Habit {
  /** Share of its trips by goal, and by number of pieces (1, 2, …). */
  goals: { [goal: string]: number }
  pieces: { [count: string]: number }
  /** Time left (s) at which it leaves for a finish. */
  departs: number
  /** By place: the factor on the whole times of its legs there that takes out the waiting which observed times contain. */
  unhindered?: { [place: string]: number }
  /** What its numbers may be instead, each draw as likely as the others; a match meets one of them. */
  draws?: HabitDraw[]
}

/** One draw from what is believed about an observed robot. What is left out is as the robot says. */
export interface HabitDraw {
  /** Factor on all of its times. */
  time?: number
  /** Geometric standard deviation of its form. */
  form?: number
  goals?: { [goal: string]: number }
  pieces?: { [count: string]: number }
  departs?: number
  /** Success per piece by goal; of its finishes. */
  success?: { [goal: string]: number }
  finish?: { [finish: string]: number }
  absent?: number
  stops?: number
}
