// @ts-check
import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'

/** Where Debian's package puts the programs of the server, which are not in the path. */
const versions = '/usr/lib/postgresql'

/** The folder of the newest version's programs; null where there is none. @returns {string | null} */
export function serverPrograms() {
  if (!existsSync(versions)) return null
  const folders = readdirSync(versions)
    .sort((a, b) => Number(b) - Number(a))
    .map((version) => join(versions, version, 'bin'))
  return folders.find((folder) => existsSync(join(folder, 'initdb'))) ?? null
}
