import { fileURLToPath } from 'node:url'
import react from '@vitejs/plugin-react'
import { defineConfig, type Plugin } from 'vite'
import { offline } from './scripts/offline.js'

const server = process.env.CYCLEWRIGHT_SERVER ?? 'http://127.0.0.1:3000'

const page = (name: string) => fileURLToPath(new URL(`web/${name}.html`, import.meta.url))

/** The page of the stands at its own address also where Vite serves the sources. */
const standsAddress = (): Plugin => ({
  name: 'stands-address',
  configureServer: ({ middlewares }) => {
    middlewares.use((request, _, next) => {
      if (/^\/stands(\/|\?|$)/.test(request.url ?? '') && !/\.\w+(\?|$)/.test(request.url ?? ''))
        request.url = '/stands.html'
      next()
    })
  },
})

/** A numerical library says its licence in each of some four hundred files: each keeps its copyright and the licence's address. */
const shortNotices = (): Plugin => ({
  name: 'short-notices',
  transform: (code, id) =>
    id.includes('/@stdlib/')
      ? code.replace(/Licensed under the Apache License, Version 2\.0[\s\S]*?limitations under the License\./, licence)
      : null,
})

const licence = 'http://www.apache.org/licenses/LICENSE-2.0'

/** The screens, and the page of the stands. `vite build` writes dist/web, which the server serves; `vite` alone passes calls on to a running server. */
export default defineConfig({
  root: 'web',
  plugins: [react(), standsAddress(), offline()],
  resolve: {
    alias: {
      // A numerical library's debugging messages have no reader in a page, nor what it says of wrong types.
      debug: fileURLToPath(new URL('web/worker/silent.cjs', import.meta.url)),
      '@stdlib/string-format': fileURLToPath(new URL('web/worker/plainText.cjs', import.meta.url)),
    },
  },
  build: {
    outDir: '../dist/web',
    emptyOutDir: true,
    manifest: true,
    target: 'es2022',
    rolldownOptions: { input: { index: page('index'), stands: page('stands') } },
  },
  // Named like the worker itself, so that the service worker keeps them with it.
  worker: {
    format: 'es',
    plugins: () => [shortNotices()],
    rolldownOptions: { output: { chunkFileNames: 'assets/model.worker-[name]-[hash].js' } },
  },
  server: { proxy: { '/trpc': server, '/api': server, '/health': server } },
})
