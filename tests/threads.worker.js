import { existsSync, writeFileSync } from 'node:fs'

// A thread that ends as it is told.

const mark = process.env.ENDS_AT_START
if (mark === 'always') process.exit(9)
if (mark && !existsSync(mark)) {
  writeFileSync(mark, '')
  process.exit(9)
}

export const echo = (text) => text

export const begins = (file) => {
  writeFileSync(file, '')
  for (;;);
}

export const exits = () => process.exit(7)

export const grows = () => {
  const all = []
  for (;;) all.push(Array.from({ length: 1000 }, (_, index) => ({ index })))
}

export const throws = () => {
  throw new Error('of its own')
}
