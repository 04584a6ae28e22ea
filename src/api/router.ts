import { afterRouter } from './after/router.ts'
import { backups } from './backups.ts'
import { briefingRouter } from './briefing/router.ts'
import { computeRouter } from './compute/router.ts'
import { documents } from './documents/router.ts'
import { estimatesRouter } from './estimates/router.ts'
import { event } from './event/router.ts'
import { exchange } from './exchange/router.ts'
import { guesses } from './guesses/router.ts'
import { health, ready } from './health.ts'
import { jobsRouter } from './jobs/router.ts'
import { packRouter } from './pack/router.ts'
import { audit, devices, invitations, named, people, session } from './people/index.ts'
import { looksProcedures } from './picks/looksRouter.ts'
import { picksRouter } from './picks/router.ts'
import { seedsProcedures } from './picks/seedsRouter.ts'
import { leadRouter } from './records/leadRouter.ts'
import { recordsRouter } from './records/router.ts'
import { schemas } from './schemas.ts'
import { stands } from './stands/router.ts'
import { router } from './trpc.ts'

/** Everything that the server can be asked, for the web by tRPC and for other programs as plain HTTP. */
export const appRouter = router({
  health,
  ready,
  session,
  people,
  named,
  devices,
  invitations,
  audit,
  backups,
  briefing: briefingRouter,
  after: afterRouter,
  compute: computeRouter,
  documents,
  estimates: estimatesRouter,
  event,
  exchange,
  guesses,
  jobs: jobsRouter,
  pack: packRouter,
  records: recordsRouter,
  lead: leadRouter,
  looks: router(looksProcedures),
  picks: picksRouter,
  seeds: router(seedsProcedures),
  schemas,
  stands,
})

export type AppRouter = typeof appRouter
