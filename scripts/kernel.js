// Writes src/model/kernel/kernelBytes.ts from kernel.wat.
import { readFile, writeFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import openAssembler from 'wabt'

const folder = new URL('../src/model/kernel/', import.meta.url)

/** The module as text, for a source file: browsers and threads then load it as they load the rest. */
export async function assembled() {
  const assembler = await openAssembler()
  const source = await readFile(new URL('kernel.wat', folder), 'utf8')
  const { buffer } = assembler.parseWat('kernel.wat', source, { simd: true }).toBinary({})
  const bytes = Buffer.from(buffer)
    .toString('base64')
    .match(/.{1,112}/g)
  return `/** Made from kernel.wat by \`npm run kernel\`. */\nexport const kernelBytes = \`\n${bytes.join('\n')}\n\`\n`
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await writeFile(new URL('kernelBytes.ts', folder), await assembled())
  process.stdout.write('src/model/kernel/kernelBytes.ts is written.\n')
}
