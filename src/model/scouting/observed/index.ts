/** Teams as robots of simulated matches, by what was seen of them. */

export { type Observed, observedRobot } from './robot.ts'
