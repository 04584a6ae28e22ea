/** Longest pause between two tries (ms). */
export const cap = 60_000

/**
 * How long to wait before try number `failed` + 1 (ms): doubling from one second to the cap, of which a random half is taken
 * off, so that a hundred phones that lost the same network do not come back in the same moment.
 */
export function pauseAfter(failed: number, random: () => number = Math.random): number {
  const whole = Math.min(cap, 1000 * 2 ** Math.max(0, failed - 1))
  return whole / 2 + (whole / 2) * random()
}

/** What a server asks for by `Retry-After`: seconds or a date (RFC 9110, 10.2.3), as ms from now; null where it says nothing. */
export function retryAfter(header: string | null, now: number): number | null {
  if (header === null || header.trim() === '') return null
  const ms = /^\d+$/.test(header.trim()) ? Number(header) * 1000 : Date.parse(header) - now
  return Number.isNaN(ms) ? null : Math.min(10 * cap, Math.max(0, ms))
}
