import type { Path } from '../errors.ts'
import { partFaults } from './partFaults.ts'
import type { Part } from './parts.ts'
import type { Spread } from './types.ts'

/** Where two numbers of an input contradict each other; a calculator must not be asked then. */
export interface InputFault {
  path: Path
  rule: 'order' | 'stops' | 'shotMissing' | 'part'
}

const partKinds: readonly unknown[] = ['motor', 'cylinder', 'valve', 'compressor', 'tank', 'wheel']

type Node = { readonly [key: string]: unknown }

/** What the bounds of single fields can not say about a calculator's input; empty where it can be computed. */
export function inputFaults(input: object): InputFault[] {
  const found: InputFault[] = []
  const walk = (value: unknown, path: Path): void => {
    if (typeof value !== 'object' || value === null) return
    const node = value as Node
    if (node['kind'] === 'range') found.push(...orderFaults(node as unknown as Spread & { kind: 'range' }, path))
    else if (partKinds.includes(node['kind'])) {
      const faults = partFaults(node as unknown as Part)
      found.push(...faults.map((fault): InputFault => ({ path: [...path, ...fault.path], rule: 'part' })))
    } else
      for (const [key, each] of Object.entries(node)) walk(each, [...path, Array.isArray(value) ? Number(key) : key])
  }
  walk(input, [])
  const { stops, stage, shot } = input as {
    stops?: { low: number; high: number } | null
    stage?: string
    shot?: unknown
  }
  if (stops && stops.low >= stops.high) found.push({ path: ['stops', 'high'], rule: 'stops' })
  if (stage === 'recovery' && shot === null) found.push({ path: ['shot'], rule: 'shotMissing' })
  return found
}

function orderFaults({ low, likely, high }: Spread & { kind: 'range' }, path: Path): InputFault[] {
  if (low > likely) return [{ path: [...path, 'likely'], rule: 'order' }]
  return likely > high ? [{ path: [...path, 'high'], rule: 'order' }] : []
}
