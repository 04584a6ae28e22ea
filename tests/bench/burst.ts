import { Agent, request } from 'node:http'
import { seen } from '../faults/harbourEvent.ts'

export interface Burst {
  phones: number
  observations: number
}

export interface Taken {
  /** Until all are acknowledged (ms). */
  all: number
  /** Of each request (ms), in order of size. */
  each: number[]
}

export const large: Burst = { phones: 200, observations: 100 }
export const small: Burst = { phones: 60, observations: 40 }

function post(agent: Agent, url: string, body: string): Promise<{ status: number; text: string }> {
  return new Promise((resolve, reject) => {
    const headers = { 'content-type': 'application/json', 'content-length': Buffer.byteLength(body) }
    const sent = request(`${url}/api/records`, { method: 'POST', agent, headers }, (answer) => {
      let text = ''
      answer.setEncoding('utf8')
      answer.on('data', (chunk) => {
        text += chunk
      })
      answer.on('end', () => resolve({ status: answer.statusCode!, text }))
    })
    sent.on('error', reject)
    sent.end(body)
  })
}

/** Every phone sends its batch at once, and again as soon as it is answered, as one whose answer was lost would. */
export async function burst(url: string, bodies: readonly string[], observations: number): Promise<Taken> {
  const agent = new Agent({ keepAlive: true, maxSockets: bodies.length })
  const each: number[] = []
  const begin = performance.now()
  await Promise.all(
    bodies.map(async (body) => {
      for (const again of [false, true]) {
        const sent = performance.now()
        const { status, text } = await post(agent, url, body)
        each.push(performance.now() - sent)
        const right = text.split(`"outcome":"held","again":${again}`).length - 1
        if (status !== 200 || right !== observations) throw new Error(`${status}, ${right} held: ${text.slice(0, 300)}`)
      }
    }),
  )
  const all = performance.now() - begin
  agent.destroy()
  return { all, each: each.sort((a, b) => a - b) }
}

let turn = 0

/** Rows that no burst before had. */
export function bodiesOf({ phones, observations }: Burst): string[] {
  turn++
  return Array.from({ length: phones }, (_, phone) => {
    const device = turn * 1000 + phone
    const rows = Array.from({ length: observations }, (_, sequence) => seen(device, sequence))
    return JSON.stringify({ device: `phone-${device}`, unsent: 0, rows })
  })
}

/** The request below which so many of a hundred stay (ms). */
export const percentile = (sorted: readonly number[], of: number): number =>
  sorted[Math.ceil(sorted.length * (of / 100)) - 1]!
