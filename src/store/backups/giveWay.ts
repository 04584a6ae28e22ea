import { readlinkSync } from 'node:fs'
import { constants, setPriority } from 'node:os'
import { basename } from 'node:path'

/**
 * Lets all other threads go first, where the system tells threads apart (Linux): a copy has time, and whoever waits for an
 * answer has not. Elsewhere nothing changes.
 */
export function giveWay(): void {
  try {
    const thread = Number(basename(readlinkSync('/proc/thread-self')))
    setPriority(thread, constants.priority.PRIORITY_LOW)
  } catch {
    // No such thing here, or not allowed.
  }
}
