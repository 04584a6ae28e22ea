/**
 * Loads that a robot carrying at most `carries` pieces considers: 1, ⌈c/4⌉, ⌈c/2⌉, ⌈3c/4⌉ and c, rising, each once.
 * @example loadsFor(3) // [1, 2, 3]
 */
export function loadsFor(carries: number): number[] {
  const loads = new Set([1, Math.ceil(carries / 4), Math.ceil(carries / 2), Math.ceil((3 * carries) / 4), carries])
  return [...loads].filter((n) => n >= 1 && n <= carries).sort((a, b) => a - b)
}
