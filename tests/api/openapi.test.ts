import { Validator } from '@seriousme/openapi-schema-validator'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { appRouter } from '../../src/api/router.ts'
import { type Server, startServer } from './server.ts'

let server: Server

beforeAll(async () => {
  server = await startServer()
})

afterAll(() => server.close())

test('The description is a valid OpenAPI 3.1 document, by the schema of the standard', async () => {
  const { status, body } = await server.get('/api/openapi.json')
  expect(status).toBe(200)
  const validator = new Validator()
  const result = await validator.validate(structuredClone(body))
  expect(result.errors ?? []).toEqual([])
  expect(result.valid).toBe(true)
  expect(validator.version).toBe('3.1')
})

test('A description that is none would be noticed', async () => {
  const { body } = await server.get('/api/openapi.json')
  body.paths['/api/compute/travel'].post.responses = []
  expect((await new Validator().validate(body)).valid).toBe(false)
})

test('It names every procedure, each under an address of its own', async () => {
  const { body } = await server.get('/api/openapi.json')
  const operations = Object.values(body.paths as Record<string, Record<string, { operationId: string }>>)
    .flatMap((path) => Object.values(path))
    .map(({ operationId }) => operationId)
  // Streams are no procedures.
  const streams = ['jobs.events', 'records.live']
  expect(operations.sort()).toEqual([...Object.keys(appRouter._def.procedures), ...streams].sort())
})

test('It names the endpoints that other programs rely on', async () => {
  const { body } = await server.get('/api/openapi.json')
  for (const name of ['travel', 'leg', 'plan', 'compare']) {
    const { post } = body.paths[`/api/compute/${name}`]
    const { schema } = post.requestBody.content['application/json']
    expect(schema.additionalProperties, name).toBe(false)
    expect(Object.keys(post.responses), name).toEqual(
      expect.arrayContaining(['200', '400', '413', '415', '422', '503']),
    )
  }
})

test('Its contracts carry units, bounds and the refusal of unknown fields', async () => {
  const { body } = await server.get('/api/openapi.json')
  const { Drive, Clock, Spot } = body.components.schemas
  expect(Drive.properties.topSpeed).toMatchObject({ description: 'm/s', minimum: 0.01 })
  expect(Clock.properties.teleop).toMatchObject({ multipleOf: 0.1, maximum: 600 })
  expect(Spot).toMatchObject({ additionalProperties: false, required: ['id', 'at'] })
})

test('All references lead somewhere', async () => {
  const { body } = await server.get('/api/openapi.json')
  const references = [...JSON.stringify(body).matchAll(/"\$ref":"#\/components\/schemas\/([^"]+)"/g)].map(
    ([, id]) => id!,
  )
  expect(references.length).toBeGreaterThan(50)
  expect(references.filter((id) => !(id in body.components.schemas))).toEqual([])
})
