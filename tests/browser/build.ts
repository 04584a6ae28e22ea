import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { build } from 'vite'
import type { TestProject } from 'vitest/node'
import { projectRoot } from '../../src/root.ts'

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder of the screens as their sources are now. */
    screens: string
  }
}

/** Builds the screens once for all tests in a browser. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const folder = await mkdtemp(join(tmpdir(), 'cyclewright-screens-'))
  // As they are delivered: with libraries that do not check what only a developer needs.
  const { NODE_ENV: before } = process.env
  process.env.NODE_ENV = 'production'
  await build({
    configFile: join(projectRoot(), 'vite.config.ts'),
    logLevel: 'error',
    build: { outDir: folder, emptyOutDir: true },
  })
  process.env.NODE_ENV = before
  project.provide('screens', folder)
  return () => rm(folder, { recursive: true, force: true })
}
