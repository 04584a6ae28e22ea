import { createServer, type IncomingMessage, request, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'

/**
 * What lies between phone and server. replyLost: the server answers, and the answer never arrives. cut: it breaks off in its middle.
 * twice: the request arrives two times. held: it stays on the way until it is let go, also when its sender has long gone. portal: a
 * page in the place of every answer, as a hotel's network has it. badGateway: a page with 502. gone: no network.
 */
export type Trouble = 'none' | 'replyLost' | 'cut' | 'twice' | 'held' | 'portal' | 'badGateway' | 'gone'

/** A batch of records that passed, in the order in which they reached the server. */
export interface Passed {
  ids: string[]
  cookie: string
}

export interface FaultyProxy {
  url: string
  trouble: Trouble
  /** Requests for the records' address that reached the server. */
  passed: Passed[]
  /** Requests that ran into the trouble since it was set by `meet`. */
  met: number
  meet(trouble: Trouble): void
  /** Lets what is held go to the server; resolves when all of it was answered there. */
  release(): Promise<void>
  close(): Promise<void>
}

interface Whole {
  status: number
  headers: IncomingMessage['headers']
  body: Buffer
}

const bodyOf = async (message: IncomingMessage): Promise<Buffer> => {
  const parts: Buffer[] = []
  for await (const part of message) parts.push(part as Buffer)
  return Buffer.concat(parts)
}

const page = '<!doctype html><title>Welcome</title><h1>Please accept the terms of this network</h1>'

/** These troubles are of records only, so that what comes before them gets through; the others are of all that is asked of the API. */
const ofRecords = new Set<Trouble>(['replyLost', 'cut', 'twice', 'held'])

/** A proxy on a port of its own before the server at `target`. The host's name is passed on, so that cookies and origins are right. */
export async function openProxy(target: string): Promise<FaultyProxy> {
  const to = new URL(target)
  const held: (() => Promise<unknown>)[] = []

  const forward = (incoming: IncomingMessage, body: Buffer): Promise<Whole> =>
    new Promise((resolve, reject) => {
      const { method, url, headers } = incoming
      const sent = request({ host: to.hostname, port: to.port, method, path: url, headers }, (answer) => {
        bodyOf(answer).then((whole) => {
          resolve({ status: answer.statusCode!, headers: answer.headers, body: whole })
        }, reject)
      })
      sent.on('error', reject)
      sent.end(body)
    })

  const answer = (response: ServerResponse, { status, headers, body }: Whole) => {
    const { 'transfer-encoding': _, connection: __, ...rest } = headers
    response.writeHead(status, { ...rest, 'content-length': body.length })
    return { all: () => response.end(body), half: () => response.write(body.subarray(0, body.length >> 1)) }
  }

  async function take(incoming: IncomingMessage, response: ServerResponse): Promise<void> {
    const body = await bodyOf(incoming)
    const isRecords = incoming.method === 'POST' && incoming.url === '/api/records'
    const { trouble } = proxy
    const troubled = ofRecords.has(trouble) ? isRecords : (incoming.url ?? '').startsWith('/api/')
    const pass = () => {
      if (isRecords) {
        const { rows } = JSON.parse(String(body)) as { rows: { id: string }[] }
        proxy.passed.push({ ids: rows.map(({ id }) => id), cookie: incoming.headers.cookie ?? '' })
      }
      return forward(incoming, body)
    }
    if (!troubled || trouble === 'none') {
      answer(response, await pass()).all()
      return
    }
    proxy.met++
    switch (trouble) {
      case 'gone':
        incoming.socket.destroy()
        return
      case 'portal':
      case 'badGateway':
        response.writeHead(trouble === 'portal' ? 200 : 502, { 'content-type': 'text/html' }).end(page)
        return
      case 'twice':
        await pass()
        answer(response, await pass()).all()
        return
      case 'held':
        held.push(pass)
        return
      case 'replyLost':
        await pass()
        incoming.socket.destroy()
        return
      case 'cut':
        answer(response, await pass()).half()
        // Once the half is on its way.
        setImmediate(() => incoming.socket.destroy())
    }
  }

  const server = createServer((incoming, response) => {
    take(incoming, response).catch(() => incoming.socket.destroy())
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const proxy: FaultyProxy = {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    trouble: 'none',
    passed: [],
    met: 0,
    meet: (trouble) => {
      proxy.trouble = trouble
      proxy.met = 0
    },
    release: async () => {
      await Promise.all(held.splice(0).map((pass) => pass()))
    },
    close: () => {
      server.closeAllConnections()
      return new Promise((resolve) => server.close(() => resolve()))
    },
  }
  return proxy
}
