/** What comes after the matches that count: how alliances are formed, whom to invite, who wins, and where to look before that. */
export * from './looks/index.ts'
export * from './order/index.ts'
export * from './playoffs/index.ts'
export * from './protocol/index.ts'
export * from './scores/index.ts'
export * from './seeds/index.ts'
export * from './selection/index.ts'
export * from './waiting/index.ts'
