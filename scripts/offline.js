// @ts-check
import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const source = fileURLToPath(new URL('../web/offline/serviceWorker.js', import.meta.url))

/**
 * A page that opens without a connection: its worker, where it stands, what it is made of beside its entry (by the ends of the
 * sources' names), and files that it asks for by itself.
 * @typedef {{ worker: string, own: string, shell: string, page: RegExp, later: boolean, parts: string[], besides: RegExp[] }} Kept
 */

/** @type {readonly Kept[]} */
const pages = [
  {
    worker: 'sw.js',
    own: 'cyclewright',
    shell: 'index.html',
    page: /^\/designs\/[^/]+\/stopwatch\/?$/,
    // All screens are loaded later: only that of the stopwatch is kept, with the texts of any screen but the first.
    later: false,
    parts: [
      'screens/designs/stopwatch/StopwatchScreen.tsx',
      'words/en/index.ts',
      'words/de/index.ts',
      'words/de/first.ts',
    ],
    // The model's worker, the letters of the languages offered.
    besides: [/^assets\/model\.worker-[^/]+\.js$/, /^assets\/[^/]+-latin-wght-normal-[^/]+\.woff2$/],
  },
  {
    worker: 'event-sw.js',
    own: 'cyclewright-event',
    shell: 'index.html',
    page: /^\/event\/[^/]+(\/.*)?$/,
    later: false,
    // What is worked out in the browser; all other parts of an event say that the server is missing.
    parts: [
      'screens/event/EventsScreen.tsx',
      'screens/event/briefing/BriefingScreen.tsx',
      'screens/event/pit/PitScreen.tsx',
      'screens/event/picks/PicksScreen.tsx',
      'screens/event/playoffs/PlayoffsScreen.tsx',
      'shell/WhoIsIn.tsx',
      'shell/SettingsPanel.tsx',
      'words/en/index.ts',
      'words/de/index.ts',
      'words/de/first.ts',
    ],
    besides: [/^assets\/model\.worker-[^/]+\.js$/, /^assets\/[^/]+-latin-wght-normal-[^/]+\.woff2$/],
  },
  {
    worker: 'stands-sw.js',
    own: 'cyclewright-stands',
    shell: 'stands.html',
    page: /^\/stands(\/.*)?$/,
    later: true,
    parts: [],
    // The letters, and the reader of codes, which runs in a worker.
    besides: [/^assets\/source-sans-3-latin-wght-normal-[^/]+\.woff2$/, /^assets\/read\.worker-[^/]+\.js$/],
  },
]

/**
 * Writes the service workers of a build: with the names of the files that their pages need, which change with their contents.
 * @returns {import('vite').Plugin}
 */
export function offline() {
  return {
    name: 'offline',
    apply: 'build',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        for (const kept of pages) {
          const list = filesOf(kept, bundle, (missing) => this.error(missing))
          const page = bundle[kept.shell]
          const html = page?.type === 'asset' ? String(page.source) : ''
          if (html === '') this.error(`The service worker finds no ${kept.shell}`)
          const template = readFileSync(source, 'utf8')
          const mark = createHash('sha256').update(JSON.stringify(list)).update(html).update(template).digest('hex')
          this.emitFile({
            type: 'asset',
            fileName: kept.worker,
            source: template
              .replace('__MARK__', mark.slice(0, 16))
              .replace('__FILES__', JSON.stringify(list))
              .replace('__SHELL__', `/${kept.shell}`)
              .replace('__PAGE__', String(kept.page))
              .replace('__OWN__', kept.own),
          })
        }
      },
    },
  }
}

/**
 * @param {Kept} kept
 * @param {import('vite').Rollup.OutputBundle} bundle
 * @param {(message: string) => never} fail
 */
function filesOf({ shell, later, parts, besides }, bundle, fail) {
  const chunks = Object.values(bundle).filter((file) => file.type === 'chunk')
  const wanted = [`web/${shell}`, ...parts]
  const missing = wanted.filter((part) => !chunks.some(({ facadeModuleId }) => facadeModuleId?.endsWith(part)))
  if (missing.length > 0) fail(`The service worker finds no ${missing.join(', ')}`)
  const open = chunks
    .filter(({ facadeModuleId }) => wanted.some((part) => facadeModuleId?.endsWith(part)))
    .map(({ fileName }) => fileName)
  /** @type {Set<string>} */
  const files = new Set()
  for (let name = open.pop(); name !== undefined; name = open.pop()) {
    if (files.has(name)) continue
    files.add(name)
    const chunk = chunks.find(({ fileName }) => fileName === name)
    open.push(...(chunk?.imports ?? []), ...(chunk?.viteMetadata?.importedCss ?? []))
    if (later) open.push(...(chunk?.dynamicImports ?? []))
  }
  for (const name of Object.keys(bundle)) if (besides.some((each) => each.test(name))) files.add(name)
  return [...files].map((name) => `/${name}`).sort()
}
