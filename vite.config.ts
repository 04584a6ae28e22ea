import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

const server = process.env.CYCLEWRIGHT_SERVER ?? 'http://127.0.0.1:3000'

/** The screens. `vite build` writes dist/web, which the server serves; `vite` alone passes calls on to a running server. */
export default defineConfig({
  root: 'web',
  plugins: [react()],
  build: { outDir: '../dist/web', emptyOutDir: true, manifest: true, target: 'es2022' },
  worker: { format: 'es' },
  server: { proxy: { '/trpc': server, '/api': server, '/health': server } },
})
