export type { Kernel } from './plain.ts'
export { Workspace } from './workspace.ts'
