// What is known of an event
export * from './types.ts'
