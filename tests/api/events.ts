/** One server-sent event, or the comment that keeps a connection alive. */
export interface Sent {
  id?: number
  event: string
  // biome-ignore lint/suspicious/noExplicitAny: what a server sends is what the test looks at
  data: any
}

/** The events of a stream as they come, until it ends; comments are events of the name 'comment'. */
export async function* eventsOf(response: Response): AsyncGenerator<Sent> {
  let text = ''
  const decoder = new TextDecoder()
  for await (const chunk of response.body as unknown as AsyncIterable<Uint8Array>) {
    text += decoder.decode(chunk, { stream: true })
    const blocks = text.split('\n\n')
    text = blocks.pop()!
    for (const block of blocks) yield* read(block)
  }
}

function read(block: string): Sent[] {
  const field = (name: string) =>
    block
      .split('\n')
      .find((line) => line.startsWith(`${name}:`))
      ?.slice(name.length + 1)
      .trim()
  if (block.startsWith(':')) return [{ event: 'comment', data: block.slice(1).trim() }]
  const [id, event, data] = [field('id'), field('event'), field('data')]
  if (event === undefined) return []
  return [{ ...(id === undefined ? {} : { id: Number(id) }), event, data: JSON.parse(data ?? 'null') }]
}
