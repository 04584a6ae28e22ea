import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from 'fflate'
import type { Problem } from '../../model/errors.ts'
import { tellExchange } from '../../model/event/archive/index.ts'

/** What is unpacked at most (bytes): a small file may unpack into more than any memory holds. */
const mostUnpacked = 400_000_000

export interface TextFile {
  name: string
  text: string
}

/** Texts as one zip file. Pictures in them gain little by long thinking. */
export function zipped(files: readonly TextFile[]): Uint8Array {
  const entries = files.map(({ name, text }): [string, Zippable[string]] => {
    const bytes = strToU8(text)
    return [name, [bytes, { level: bytes.length > 4_000_000 ? 1 : 6 }]]
  })
  return zipSync(Object.fromEntries(entries))
}

const problem = (said: Parameters<typeof tellExchange>[0]): Problem => ({ path: ['file'], ...tellExchange(said) })

/** The texts of a zip file by their names without folders, or what is wrong with it. */
export function unzipped(file: Uint8Array, most = mostUnpacked): Map<string, string> | Problem {
  let bytes = 0
  let read: ReturnType<typeof unzipSync>
  try {
    read = unzipSync(file, {
      filter: ({ name, originalSize }) => {
        // What some systems add beside each file.
        if (!name.endsWith('.csv') || name.startsWith('__MACOSX/')) return false
        bytes += originalSize
        return bytes <= most
      },
    })
  } catch {
    return problem({ code: 'noZip', parts: {} })
  }
  if (bytes > most) return problem({ code: 'zipTooLarge', parts: { megabytes: most / 1_000_000 } })
  return new Map(Object.entries(read).map(([name, content]) => [name.split('/').at(-1)!, strFromU8(content)]))
}
