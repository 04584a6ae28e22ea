import type { Field } from './types.ts'

type Rest = Partial<Omit<Field, 'name' | 'type' | 'path' | 'about'>>

const field =
  (type: Field['type']) =>
  (name: string, path: string, about: string, rest: Rest = {}): Field => ({
    name,
    type,
    path: path.split('.'),
    about,
    ...rest,
  })

export const text = field('string')
export const number = field('number')
export const whole = field('integer')
export const yes = field('boolean')
export const list = field('array')

export const needed = { needed: true } as const
/** Of a column that came later. */
export const later = { mayLack: true } as const
export const nullable = { nullable: true } as const

/** Seconds, metres and the like. */
export const measured = (unit: string): Rest => ({ unit })
