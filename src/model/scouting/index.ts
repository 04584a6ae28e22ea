// What is known of an event
export * from './people.ts'
export * from './roles.ts'
export * from './types.ts'
