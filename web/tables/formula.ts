export { escapeText, unescapeText } from '../../src/model/scouting/tables/formula.ts'
