/** Statistics that estimates, doubts and forecasts are made of, each held against published values. */

// Observers, forecasts and games
export { type Intraclass, intraclass, kappa, krippendorff, type Scale } from './agreement.ts'
// Numbers described, and means compared
export { bootstrap, idealError } from './bootstrap.ts'
export { bradleyTerry, type Meetings } from './bradleyTerry.ts'
export { type Clustered, clusteredMean } from './clustered.ts'
// Beliefs
export * from './conjugate.ts'
export { described, meanOf, medianOf, quantileOf, quantilesOf } from './described.ts'
// Distributions
export * from './distributions.ts'
export { type Brier, brier, normalCrps, randomisedPit, sampleCrps } from './forecasts.ts'
export { clopperPearson, type Limits, poissonLimits, wilson } from './intervals.ts'
export { kaplanMeier, type Lasted, type Survival } from './kaplanMeier.ts'
export { kolmogorovTail, oneSample, twoSamples } from './kolmogorovSmirnov.ts'
export { leastSquares, ridge } from './leastSquares.ts'
export { logBeta, logChoose, logGamma } from './logGamma.ts'
export { normalCdf, normalDensity, normalQuantile, upperTail } from './normal.ts'
export { normalWin, type Outcome, poissonOutcome, roundRobin } from './outcomes.ts'
export { shrunk } from './shrinkage.ts'
export { differenceOn, paired, pooled, welch } from './student.ts'
