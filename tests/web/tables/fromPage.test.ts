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
