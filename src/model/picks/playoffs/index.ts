/** Who wins the event, and what follows from it for whom to join and who plays. */
export { bracketOf, type Format, type From, seriesChance, type Tie } from './bracket.ts'
export * from './chances.ts'
export { compareOffer, type Offer, type OfferRequest } from './offer.ts'
export { type BracketStanding, type GameChance, playBracket, TieLuck } from './play.ts'
export { type Played as PlayedBracket, type PlayedRequest, playedBracket } from './standing.ts'
