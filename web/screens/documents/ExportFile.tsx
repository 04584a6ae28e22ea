import { Button } from '@mantine/core'

/** Offers a document as a JSON file. */
export function ExportFile(props: { name: string; body: unknown }) {
  const save = () => {
    const address = URL.createObjectURL(
      new Blob([`${JSON.stringify(props.body, null, 2)}\n`], { type: 'application/json' }),
    )
    const link = document.createElement('a')
    link.href = address
    link.download = `${props.name.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '') || 'document'}.json`
    link.click()
    URL.revokeObjectURL(address)
  }
  return (
    <Button variant="default" onClick={save}>
      Save as a file
    </Button>
  )
}
