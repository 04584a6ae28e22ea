import { defineConfig } from 'prisma/config'

// Generating the client needs no engine, yet the tool downloads one unless it is told of some executable.
process.env.PRISMA_SCHEMA_ENGINE_BINARY ??= process.execPath

export default defineConfig({ schema: 'prisma/schema.prisma' })
