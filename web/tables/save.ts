/** Hands a text, or bytes, to the browser as a file to be kept. */
export function saveFile(name: string, text: string | Blob, type: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  URL.revokeObjectURL(address)
}
