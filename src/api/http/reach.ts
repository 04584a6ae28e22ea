import type { AddressInfo } from 'node:net'
import { networkInterfaces } from 'node:os'
import type { FastifyInstance } from 'fastify'

/** Where a server can be reached by devices in its network. */
export interface Reach {
  onlyHere: boolean
  addresses: string[]
}

export const isLoopback = (address: string): boolean => /^127\.|^localhost$|^::1$|^::ffff:127\./.test(address)

/** What the listening socket and this machine's network say. A server that does not listen is reached by nobody. */
export function reachOf(app: FastifyInstance, secure: boolean): Reach {
  const listening = app.server.address() as AddressInfo | null
  if (listening === null || isLoopback(listening.address)) return { onlyHere: true, addresses: [] }
  const everywhere = listening.address === '0.0.0.0' || listening.address === '::'
  const own = Object.values(networkInterfaces()).flatMap((entries) =>
    (entries ?? []).filter(({ family, internal }) => family === 'IPv4' && !internal).map(({ address }) => address),
  )
  const hosts = everywhere ? own : [listening.family === 'IPv6' ? `[${listening.address}]` : listening.address]
  return { onlyHere: false, addresses: hosts.map((host) => `${secure ? 'https' : 'http'}://${host}:${listening.port}`) }
}
