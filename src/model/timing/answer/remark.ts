import type { Remark } from '../types.ts'

/** A number as a person reads it: three digits are more than any of these is known to. */
function shown(value: number): string {
  if (value === 0 || !Number.isFinite(value)) return String(value)
  const digits = Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value))))
  return String(Number(value.toFixed(Math.min(digits, 12))))
}

/** A remark from a sentence with names in braces. */
export function remark(code: string, sentence: string, values: { [name: string]: number } = {}): Remark {
  return { code, message: sentence.replace(/\{(\w+)\}/g, (_, name: string) => shown(values[name]!)), values }
}
