// @ts-check
import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const source = fileURLToPath(new URL('../web/offline/serviceWorker.js', import.meta.url))

/** What the stopwatch's page is made of: its screen, and the texts that come with any screen but the first. */
const parts = [
  'screens/designs/stopwatch/StopwatchScreen.tsx',
  'words/en/index.ts',
  'words/de/index.ts',
  'words/de/first.ts',
]

/** Files that the page asks for by itself: the model's worker, the letters of the languages offered, the mark. */
const besides = [/^assets\/model\.worker-[^/]+\.js$/, /^assets\/[^/]+-latin-wght-normal-[^/]+\.woff2$/]

/**
 * Writes the service worker of a build: with the names of the files that the stopwatch's page needs, which change with
 * their contents.
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
        const chunks = Object.values(bundle).filter((file) => file.type === 'chunk')
        /** @param {(chunk: (typeof chunks)[number]) => boolean} is */
        const found = (is) => chunks.filter(is).map(({ fileName }) => fileName)
        const missing = parts.filter((part) => !chunks.some(({ facadeModuleId }) => facadeModuleId?.endsWith(part)))
        if (missing.length > 0) this.error(`The service worker finds no ${missing.join(', ')}`)
        const open = [
          ...found(({ isEntry }) => isEntry),
          ...found(({ facadeModuleId }) => parts.some((part) => facadeModuleId?.endsWith(part))),
        ]
        /** @type {Set<string>} */
        const files = new Set()
        for (let name = open.pop(); name !== undefined; name = open.pop()) {
          if (files.has(name)) continue
          files.add(name)
          const chunk = chunks.find(({ fileName }) => fileName === name)
          open.push(...(chunk?.imports ?? []), ...(chunk?.viteMetadata?.importedCss ?? []))
        }
        for (const name of Object.keys(bundle)) if (besides.some((each) => each.test(name))) files.add(name)
        const list = [...files].map((name) => `/${name}`).sort()
        const page = bundle['index.html']
        const html = page?.type === 'asset' ? String(page.source) : ''
        if (html === '') this.error('The service worker finds no page')
        const template = readFileSync(source, 'utf8')
        const mark = createHash('sha256').update(JSON.stringify(list)).update(html).update(template).digest('hex')
        this.emitFile({
          type: 'asset',
          fileName: 'sw.js',
          source: template.replace('__MARK__', mark.slice(0, 16)).replace('__FILES__', JSON.stringify(list)),
        })
      },
    },
  }
}
