import { fileURLToPath } from 'node:url'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'
import { offline } from './scripts/offline.js'

const server = process.env.CYCLEWRIGHT_SERVER ?? 'http://127.0.0.1:3000'

/** The screens. `vite build` writes dist/web, which the server serves; `vite` alone passes calls on to a running server. */
export default defineConfig({
  root: 'web',
  plugins: [react(), offline()],
  resolve: {
    alias: {
      // A numerical library's debugging messages have no reader in a page, nor what it says of wrong types.
      debug: fileURLToPath(new URL('web/worker/silent.cjs', import.meta.url)),
      '@stdlib/string-format': fileURLToPath(new URL('web/worker/plainText.cjs', import.meta.url)),
    },
  },
  build: { outDir: '../dist/web', emptyOutDir: true, manifest: true, target: 'es2022' },
  // Named like the worker itself, so that the service worker keeps them with it.
  worker: { format: 'es', rolldownOptions: { output: { chunkFileNames: 'assets/model.worker-[name]-[hash].js' } } },
  server: { proxy: { '/trpc': server, '/api': server, '/health': server } },
})
