// @ts-check
// `npm run dev`: the server and the screens, both started anew or reloaded on every change.
import { spawn } from 'node:child_process'
import { root, tool } from './steps.js'

const port = process.env.PORT ?? '3000'
const server = `http://127.0.0.1:${port}`

console.log(`The screens will be at the address that Vite prints; the server behind them at ${server}`)

const children = [
  spawn(tool('tsx'), ['watch', '--clear-screen=false', 'src/server.ts'], { cwd: root, stdio: 'inherit' }),
  spawn(tool('vite'), ['--clearScreen', 'false'], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, CYCLEWRIGHT_SERVER: server },
  }),
]

const stop = () => {
  for (const child of children) child.kill('SIGTERM')
}
for (const child of children) child.once('exit', stop)
for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM'])) process.once(signal, stop)
