import { expect, test } from 'vitest'
import { tableText } from '../../../web/screens/event/bring/tableText.ts'

const bytes = (...of: number[]): ArrayBuffer => Uint8Array.from(of).buffer

test('a table’s file is read in UTF-8, in UTF-16 by its mark, and else as older spreadsheets write umlauts', () => {
  expect(tableText(bytes(0x46, 0xc3, 0xbc))).toBe('Fü')
  expect(tableText(bytes(0xef, 0xbb, 0xbf, 0x46))).toBe('F')
  expect(tableText(bytes(0xff, 0xfe, 0x46, 0, 0xfc, 0))).toBe('Fü')
  expect(tableText(bytes(0x46, 0xfc))).toBe('Fü')
  expect(tableText(bytes())).toBe('')
})
