// @vitest-environment jsdom
import { describe, expect, test } from 'vitest'
import { tablesOf } from '../../../web/tables/fromPage.ts'

function page(html: string): ParentNode {
  document.body.innerHTML = html
  return document.body
}

describe('the tables of a page', () => {
  test('are read as they are shown, without what only a screen reader is told and what is struck through', () => {
    const [table] = tablesOf(
      page(`<details><table>
        <caption class="visually-hidden">Options side by side</caption>
        <thead><tr><th>Option</th><th>Points</th><th>Best</th></tr></thead>
        <tbody>
          <tr><th>A  Tern<div class="soft">revision 2</div></th>
              <td><s>57.1</s> <button>58.5<span class="visually-hidden"> – how this came about</span></button></td>
              <td>31\u00a0%</td></tr>
          <tr><th>B Puffin</th><td>\u22120.4</td><td>69\u00a0%</td></tr>
        </tbody></table></details>`),
    )
    expect(table).toMatchObject({
      name: 'options_side_by_side',
      title: 'Options side by side',
      columns: [
        { name: 'option', type: 'string' },
        { name: 'points', type: 'number' },
        { name: 'best', type: 'number', unit: '%' },
      ],
      rows: [
        ['A Tern revision 2', 58.5, 31],
        ['B Puffin', -0.4, 69],
      ],
    })
  })

  test('have their numbers as computed where the cells keep them, whatever the words around them say', () => {
    const [table] = tablesOf(
      page(`<table><caption>The call</caption><thead><tr><th>Option</th><th>Leave with</th><th>Best</th><th>Mixed</th></tr></thead>
        <tbody>
          <tr><th>A</th><td data-value="18.34" data-unit="s">18.3\u00a0s left</td>
              <td data-value="99.71" data-unit="%">over 99\u00a0%</td><td data-value="1.25" data-unit="s">1.3\u00a0s</td></tr>
          <tr><th>B</th><td data-value="9.0000001" data-unit="s">9.0\u00a0s left</td>
              <td data-value="" data-unit="%">–</td><td data-value="0.333" data-unit="%">33\u00a0%</td></tr>
        </tbody></table>`),
    )
    expect(table!.columns.map(({ type, unit }) => [type, unit])).toEqual([
      ['string', undefined],
      ['number', 's'],
      ['number', '%'],
      ['string', undefined],
    ])
    expect(table!.rows).toEqual([
      ['A', 18.34, 99.71, '1.3\u00a0s'],
      ['B', 9.0000001, null, '33\u00a0%'],
    ])
  })

  test('are the same where a narrow screen sets them as cards', () => {
    const [table] = tablesOf(
      page(`<ul class="cards" aria-label="The call" data-first="Option">
        <li><strong>A</strong><dl><div><dt>Points</dt><dd data-value="57.123">57.1</dd></div><div><dt>Worth</dt><dd>–</dd></div></dl></li>
        <li><strong>B</strong><dl><div><dt>Points</dt><dd data-value="58.5">58.5</dd></div><div><dt>Worth</dt><dd>0.4</dd></div></dl></li>
      </ul>`),
    )
    expect(table).toMatchObject({
      title: 'The call',
      columns: [{ title: 'Option' }, { title: 'Points' }, { title: 'Worth' }],
    })
    expect(table!.rows).toEqual([
      ['A', 57.123, null],
      ['B', 58.5, 0.4],
    ])
  })

  test('have the values of their fields', () => {
    const [table] = tablesOf(
      page(`<table><caption>Ways</caption><thead><tr><th>Way</th><th>Load</th></tr></thead>
        <tbody><tr><td><input value="Two buoys"></td><td><span class="cell-label">Load</span><input value="2"></td></tr></tbody></table>`),
    )
    expect(table!.rows).toEqual([['Two buoys', 2]])
  })

  test('are left out where they are no list of records', () => {
    const none = `<table><tbody><tr><td>no heading</td></tr></tbody></table>
      <table><thead><tr><th>A</th><th>B</th></tr></thead><tbody><tr><td colspan="2">not computed</td></tr></tbody></table>
      <table><thead><tr><th>A</th></tr></thead><tbody></tbody></table>`
    expect(tablesOf(page(none))).toEqual([])
  })
})
