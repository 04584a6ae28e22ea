import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import {
  bindMigrationAwareSqlAdapterFactory,
  type SqlMigrationAwareDriverAdapterFactory,
} from '@prisma/driver-adapter-utils'
import * as binding from '@prisma/schema-engine-wasm/schema_engine_bg'

export type SchemaEngine = binding.SchemaEngine

let loaded = false

/** Runs Prisma's schema engine in its WebAssembly form: the executable would have to be downloaded. */
function load(): void {
  if (loaded) return
  const script = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg')
  const module = new WebAssembly.Module(readFileSync(script.replace(/\.js$/, '.wasm')))
  const imports = { './schema_engine_bg.js': binding } as unknown as WebAssembly.Imports
  const instance = new WebAssembly.Instance(module, imports)
  binding.__wbg_set_wasm(instance.exports)
  ;(instance.exports['__wbindgen_start'] as () => void)()
  loaded = true
}

/** Lends an engine to `work`. The engine leaves its connections open; the factory's owner disposes of them. */
export async function withEngine<Result>(
  factory: SqlMigrationAwareDriverAdapterFactory,
  work: (engine: SchemaEngine) => Promise<Result>,
): Promise<Result> {
  load()
  const engine = await binding.SchemaEngine.new(
    { datamodels: undefined },
    () => {},
    bindMigrationAwareSqlAdapterFactory(factory),
  )
  try {
    return await work(engine)
  } finally {
    engine.free()
  }
}
