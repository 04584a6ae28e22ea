import type { Drive } from '../documents/types.ts'

/** What is known better than computed about a drive from rest to rest (s), the same both ways; undefined for nothing. */
export const ownTime = ({ times }: Pick<Drive, 'times'>, from: string, to: string): number | undefined =>
  times?.find((one) => (one.from === from && one.to === to) || (one.from === to && one.to === from))?.seconds
