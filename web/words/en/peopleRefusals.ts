/** In English, what is refused where people sign in are the program's own sentences. */
export { peopleSentences as ofPeople } from '../../../src/model/scouting/people.ts'
