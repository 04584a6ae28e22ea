import { register } from 'tsx/esm/api'

// As for the computing threads: the thread itself asks for TypeScript to be understood.
register()
await import('./backup.worker.ts')
