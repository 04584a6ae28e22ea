import { words } from '../words/catalogue.ts'

const letters = 'abcdefghjkmnpqrstuvwxyz23456789'

/** A short random ending, so that two people who copy the same thing do not meet. */
const ending = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(5)), (byte) => letters[byte % letters.length]).join('')

/** An id for a copy of a document. */
export const copyId = (id: string): string => `${id.replace(/-[a-z2-9]{5}$/, '').slice(0, 40)}-${ending()}`

export function copyName(name: string): string {
  const { copyOf } = words().shell
  return name.endsWith(copyOf('')) ? name : copyOf(name)
}

/** An id made from a name: 'North pier' → 'north-pier-x7k2m'. */
export const idFrom = (name: string): string => {
  const plain = name
    .normalize('NFD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
  return `${plain.slice(0, 40) || 'document'}-${ending()}`
}
