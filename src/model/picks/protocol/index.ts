/** What was called out at a selection, line by line, and our own notes to it: what they come to, and what can not follow them. */
export { type Protocol, protocolOf, refusedLine, topicOf, type Written } from './follow.ts'
export * from './types.ts'
