/** Where one more look is worth most for the coming decision. */
export { afterLook, expectedRise, knowledgeGradient, type Prospect } from './gradient.ts'
export * from './whereToLook.ts'
