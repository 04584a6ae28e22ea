import { createContext, useContext } from 'react'

const Context = createContext('')

/** Below it, every number that opens says that its answer holds overridden numbers, and which: see `overridesSource`. */
export const OwnNumbersProvider = Context.Provider

export const useOwnSentence = (): string => useContext(Context)
