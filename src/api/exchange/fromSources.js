import { register } from 'tsx/esm/api'

// Node 20 does not run --import in worker threads, so the thread itself asks for TypeScript to be understood.
register()

export const { archiveIn, tablesIn, tablesOut } = await import('./files.worker.ts')
