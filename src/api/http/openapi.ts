import * as z from 'zod'
import { createDocument, type ZodOpenApiOperationObject, type ZodOpenApiPathsObject } from 'zod-openapi'
import { liveKinds } from '../../live/index.ts'
import { anyBody } from '../documents/kinds.ts'
import { type Code, table } from '../errors.ts'
import { jobEvent, jobProgress, oneJob } from '../jobs/contracts.ts'
import { may } from '../who.ts'
import { type Offered, offered } from './endpoints.ts'

const failure = z
  .object({
    error: z.strictObject({
      code: z.enum(Object.keys(table) as [Code, ...Code[]]),
      message: z.string().describe('A sentence for the person who asked'),
      path: z
        .array(z.union([z.string(), z.int()]))
        .optional()
        .describe('Keys and indices from the request’s root to the field'),
    }),
  })
  .meta({ id: 'Error' })

const meanings: { readonly [status: number]: string } = {
  400: 'Not what is allowed here; path names the field',
  401: 'Nobody is signed in, or the passphrase is wrong',
  403: 'Not for the role of whoever asks, or asked for by a page of another site',
  404: 'There is no such document or round',
  409: 'Somebody saved in between, and current and base are both sides; or it can not be any more',
  413: 'Body over 2 MB, or over what this address reads',
  415: 'Body is not JSON, or not the file that is asked for',
  422: 'Understood, but there is no way, or it would take too much',
  429: 'More, or faster, than anybody needs; Retry-After says when to ask again',
  500: 'A fault of the server',
  503: 'Too much is being computed, or there is no room on the disk; Retry-After says when to ask again',
}

/** Bytes, which JSON Schema does not describe. */
const bytes = { type: 'string', format: 'binary' } as const

function responsesOf({ answer, sends, may, errors = [] }: Offered['endpoint']): ZodOpenApiOperationObject['responses'] {
  const content =
    sends?.type === 'application/zip'
      ? { 'application/zip': { schema: bytes } }
      : { 'application/json': { schema: answer } }
  return {
    '200': { description: 'The answer', content },
    ...failures([...errors, ...(may ? (['unauthenticated', 'forbidden'] as const) : [])]),
  }
}

/** Who may ask, in words, and that a session is needed. */
const gateOf = ({ may }: Offered['endpoint']) =>
  may
    ? { description: `For ${['leads', ...may].join(', ')}`, security: [{ session: [] }] }
    : { description: 'For anybody who reaches the server', security: [] }

function failures(codes: readonly Code[]): ZodOpenApiOperationObject['responses'] {
  const statuses = new Set([...codes.map((code) => table[code].status), 500])
  return Object.fromEntries(
    [...statuses]
      .sort()
      .map((status) => [
        String(status),
        { description: meanings[status] ?? '', content: { 'application/json': { schema: failure } } },
      ]),
  )
}

/** The one answer that is no JSON but a stream; no procedure, so it is described by hand. */
const jobEvents: ZodOpenApiOperationObject = {
  operationId: 'jobs.events',
  summary: 'What happens to a job, as server-sent events: asked, started, progress, threadReplaced, ended',
  tags: ['jobs'],
  description: `For ${['leads', ...may.read].join(', ')}`,
  security: [{ session: [] }],
  requestParams: {
    path: oneJob,
    header: z.object({
      'Last-Event-ID': z.string().optional().describe('Id of the last event that was heard: those after it come'),
    }),
  },
  responses: {
    '200': {
      description: 'Events until the job has ended. Their data is a JobEvent, that of progress a JobProgress',
      content: { 'text/event-stream': { schema: z.union([jobEvent, jobProgress]) } },
    },
    '204': { description: 'The job has ended and nothing more will come' },
    ...failures(['malformed', 'unauthenticated', 'forbidden', 'notFound', 'busy']),
  },
}

const liveNews: ZodOpenApiOperationObject = {
  operationId: 'records.live',
  summary: 'What changes in an event, as server-sent events named by what changed; they carry no content',
  tags: ['records'],
  requestParams: { path: z.object({ event: z.string().describe('Id of the event') }) },
  responses: {
    '200': {
      description: `First ‘before’ with how long ago each was told last (ms), then ${liveKinds.join(', ')}, until the connection is closed`,
      content: {
        'text/event-stream': {
          schema: z.union([
            z.strictObject({ event: z.string(), what: z.enum(liveKinds) }),
            z.record(z.enum(liveKinds), z.number()),
          ]),
        },
      },
    },
    ...failures(['malformed', 'unauthenticated', 'forbidden', 'busy']),
  },
}

function operationOf({ name, endpoint, procedure }: Offered): ZodOpenApiOperationObject {
  const [input] = (procedure._def as unknown as { inputs: z.ZodType[] }).inputs
  const operation: ZodOpenApiOperationObject = {
    operationId: name,
    summary: endpoint.summary,
    ...gateOf(endpoint),
    tags: [name.split('.')[0]!],
    responses: responsesOf(endpoint),
  }
  if (input instanceof z.ZodDiscriminatedUnion) return { ...operation, requestBody: bodyOf(input) }
  if (!(input instanceof z.ZodObject)) return operation
  const inPath = new Set([...endpoint.path.matchAll(/\{(\w+)\}/g)].map(([, key]) => key!))
  const part = (inside: boolean) =>
    z.strictObject(Object.fromEntries(Object.entries(input.shape).filter(([key]) => inPath.has(key) === inside)))
  const path = inPath.size > 0 ? { path: part(true) } : {}
  if (endpoint.method === 'GET' || endpoint.method === 'DELETE') {
    const further = Object.keys(part(false).shape).length > 0 ? { query: part(false) } : {}
    return { ...operation, requestParams: { ...path, ...further } }
  }
  if (endpoint.takes) {
    const { file, ...query } = part(false).shape
    const { type } = endpoint.takes
    const requestBody =
      type === 'application/zip'
        ? { required: true, content: { [type]: { schema: bytes } } }
        : bodyOf(file as z.ZodType)
    return { ...operation, requestParams: { ...path, query: z.strictObject(query) }, requestBody }
  }
  return { ...operation, requestParams: path, requestBody: bodyOf(part(false)) }
}

function bodyOf(schema: z.ZodType) {
  return { required: true, content: { 'application/json': { schema } } }
}

/** The OpenAPI 3.1 document of everything that is offered as plain HTTP, from the contracts that are checked. */
export function openApiDocument(version: string): object {
  const paths: ZodOpenApiPathsObject = {}
  for (const each of offered()) {
    const { path, method } = each.endpoint
    paths[path] = { ...paths[path], [method.toLowerCase()]: operationOf(each) }
  }
  paths['/api/jobs/{id}/events'] = { get: jobEvents }
  paths['/api/events/{event}/live'] = { get: liveNews }
  return createDocument({
    openapi: '3.1.1',
    info: {
      title: 'Cyclewright',
      version,
      description:
        'From the season’s rules and a sketched robot to a justified trade-off. Units are SI; times in a plan are time left in teleop.',
    },
    paths,
    components: {
      schemas: { DocumentBody: anyBody },
      securitySchemes: {
        session: {
          type: 'apiKey',
          in: 'cookie',
          name: 'cyclewright',
          description:
            'Set by signing in, claiming or accepting an invitation; called __Host-cyclewright under https. While nobody has claimed the server none is needed.',
        },
      },
    },
  })
}
