import { useMediaQuery } from '@mantine/hooks'

/** A phone: what is needed at once stands on the first screen, and the ways through the event after it. */
export const useNarrow = (): boolean => useMediaQuery('(max-width: 40em)', false, { getInitialValueInEffect: false })
