import type { Photo } from '../../../../src/model/scouting/types.ts'

export const addressOf = ({ type, data }: Photo): string => `data:${type};base64,${data}`
