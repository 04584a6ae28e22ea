import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The project's folder, found from any file of it, bundled or not. */
export function projectRoot(from = dirname(fileURLToPath(import.meta.url))): string {
  return existsSync(join(from, 'package.json')) ? from : projectRoot(dirname(from))
}
