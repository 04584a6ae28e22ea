/** As a start of the program does: brought to the newest schema, opened, and asked. */
export async function opensHere(file: string): Promise<void> {
  // The store offers copies, and a proof of them opens a store.
  const { openStore } = await import('../open.ts')
  const store = await openStore(`file:${file}`)
  try {
    await store.health()
    await store.isEmpty()
  } finally {
    await store.close()
  }
}
