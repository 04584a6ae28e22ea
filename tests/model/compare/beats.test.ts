import { expect, it } from 'vitest'
import { beats, type Lattice } from '../../../src/model/compare/beats.ts'

const die = (...faces: number[]): Lattice =>
  [...new Set(faces)]
    .sort((a, b) => a - b)
    .map((face) => [face, faces.filter((other) => other === face).length / faces.length])

it('is 2/3 around the circle of Efron’s dice, which beat each other in turn', () => {
  // B. Efron's four dice (as told by M. Gardner, Scientific American, December 1970): each beats the next with 2/3.
  const dice = [die(4, 4, 4, 4, 0, 0), die(3, 3, 3, 3, 3, 3), die(6, 6, 2, 2, 2, 2), die(5, 5, 5, 1, 1, 1)]
  dice.forEach((own, i) => void expect(beats(own, dice[(i + 1) % 4]!)).toBeCloseTo(2 / 3, 12))
})

it('counts a tie half: a fair die against itself is 1/2, against one that is 1 higher (15 + 5/2 … ) 10/36 + 5/72', () => {
  const fair = die(1, 2, 3, 4, 5, 6)
  const higher = die(2, 3, 4, 5, 6, 7)
  expect(beats(fair, fair)).toBeCloseTo(0.5, 12)
  // Of 36 pairs, 10 have the fair die above and 5 are ties.
  expect(beats(fair, higher)).toBeCloseTo(10 / 36 + 5 / 72, 12)
  expect(beats(fair, higher) + beats(higher, fair)).toBeCloseTo(1, 12)
})

it('takes points that differ by rounding alone as the same points', () => {
  expect(beats([[0.1 + 0.2, 1]], [[0.3, 1]])).toBe(0.5)
})
