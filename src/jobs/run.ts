import type { JobEnd, JobStore, QueuedJob, StoredJob } from '../store/types.ts'
import type { JobNewsBoard } from './news.ts'
import type { SharedOf } from './shared.ts'

/** A job that this process has taken. */
export interface Running {
  controller: AbortController
  /** Another process may have it by now: nothing is written of it here any more. */
  lost: boolean
  over: Promise<void>
}

type Of = Pick<SharedOf, 'queue' | 'jobsOf' | 'works' | 'explain'> & { news: JobNewsBoard; closing(): boolean }

/** Computes a job that was taken and writes down what became of it, or leaves it to another process. */
export async function runJob(job: QueuedJob, running: Running, of: Of): Promise<void> {
  const { queue, jobsOf } = of
  try {
    const store = jobsOf(job.workspace)
    const stored = await store.get(job.id)
    // Cancelled, or removed, while it waited.
    const back = stored && stored.endedAt === null ? await computed(stored, running, { ...of, store }) : false
    if (running.lost) return
    if (back) await queue.giveBack(job.id)
    else await queue.done(job.id)
  } finally {
    // With whatever went wrong it is found by those who sweep, and begun anew.
    if (!running.lost) await queue.letGo(job.id)
  }
}

/** Whether another process is to have it. */
async function computed(job: StoredJob, running: Running, of: Of & { store: JobStore }): Promise<boolean> {
  const { store, news, closing } = of
  const { id } = job
  const { signal } = running.controller
  const end = signal.aborted ? null : await outcomeOf(job, running, of)
  if (running.lost) return false
  if (signal.aborted && closing()) {
    await store.wait(id)
    return true
  }
  if (signal.aborted || end === null) return false
  const { done, total } = news.progressOf(job)
  await store.end(id, { ...end, done, total })
  await news.tell(id, true)
  return false
}

async function outcomeOf(
  { id, kind, request }: StoredJob,
  { controller: { signal } }: Running,
  { store, news, works, explain }: Of & { store: JobStore },
): Promise<Omit<JobEnd, 'done' | 'total'>> {
  await store.start(id)
  await news.tell(id, false)
  let replaced: Promise<unknown> = Promise.resolve()
  try {
    const work = works[kind]
    if (!work) throw new Error(`no job of the kind ${kind}`)
    const result = await work(request, {
      signal,
      progress: (done, total) => news.progress(id, { done, total }),
      replaced: () => {
        replaced = replaced.then(() => store.replaced(id)).then(() => news.tell(id, false), explain)
      },
    })
    return { state: 'done', result }
  } catch (error) {
    return { state: 'failed', failure: explain(error) }
  } finally {
    await replaced
  }
}
