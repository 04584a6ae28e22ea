// What the web is built against
export type { AppRouter } from './router.ts'
