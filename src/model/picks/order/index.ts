/** Whom to invite first, and why. */
export { believedOf } from './believed.ts'
export { type Course, type CourseOf, candidatesOf, courseWith, ownOf, replacementFor } from './course.ts'
export { type OrderRequest, pickOrder, roughOrder, roughWorth, type WorkedOrder } from './pickOrder.ts'
export * from './refine.ts'
export { Strengths, triosOf } from './strength.ts'
export type * from './types.ts'
