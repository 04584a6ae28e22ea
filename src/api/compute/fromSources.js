import { register } from 'tsx/esm/api'

// Node 20 does not run --import in worker threads, so the thread itself asks for TypeScript to be understood.
register()

export const {
  travel,
  leg,
  plan,
  planPart,
  worth,
  compare,
  timing,
  airPlan,
  sweep,
  draws,
  matches,
  stated,
  candidates,
  lineups,
  calibrations,
  film,
  estimates,
  estimatesOfTeams,
  changed,
  halfLives,
  made,
  earlierChanges,
  sideBySide,
  observed,
  doubts,
  solved,
  estimateReport,
  field,
  ratings,
  season,
  summary,
} = await import('./compute.worker.ts')
