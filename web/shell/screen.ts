import { type ComponentType, lazy } from 'react'
import { allWords } from '../words/catalogue.ts'

/** A screen is loaded when it is opened, with the texts of all screens. */
export const screen = <Props extends object>(load: () => Promise<{ default: ComponentType<Props> }>) =>
  lazy(async () => {
    const [module] = await Promise.all([load(), allWords()])
    return module
  })
