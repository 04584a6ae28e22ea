/** After an event: what was predicted, what was seen, and what of it can be given to others. */
export { type AfterRequest, afterEvent } from './after.ts'
export { type PublishedEvent, type PublishRequest, publishedEvent } from './published.ts'
export * from './types.ts'
