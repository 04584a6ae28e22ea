import { cp, mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { build } from 'vite'
import type { TestProject } from 'vitest/node'
import { isStale, made } from '../../scripts/steps.js'
import { projectRoot } from '../../src/root.ts'
import { type Ground, seededDatabase } from './ground.ts'

declare module 'vitest' {
  interface ProvidedContext {
    ground: Ground
  }
}

/** Copies the screens that `npm test` has built a moment ago, or builds them where the sources are others by now. */
async function screensInto(folder: string): Promise<void> {
  if (!isStale(made.web)) return cp(join(projectRoot(), 'dist', 'web'), folder, { recursive: true })
  // As they are delivered: with libraries that do not check what only a developer needs.
  const { NODE_ENV: before } = process.env
  process.env.NODE_ENV = 'production'
  await build({
    configFile: join(projectRoot(), 'vite.config.ts'),
    logLevel: 'error',
    build: { outDir: folder, emptyOutDir: true },
  })
  process.env.NODE_ENV = before
}

/** Builds the screens and fills a database once for all tests in a browser. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const folder = await mkdtemp(join(tmpdir(), 'cyclewright-ground-'))
  const [screens, database] = [join(folder, 'web'), join(folder, 'season.db')]
  await screensInto(screens)
  await seededDatabase(database)
  project.provide('ground', { screens, database })
  return () => rm(folder, { recursive: true, force: true })
}
