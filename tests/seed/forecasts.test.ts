import { expect, test } from 'vitest'
import { forecastBefore, seenFirst } from '../../seed/event/computeForecasts.ts'
import { forecasts } from '../../seed/event/forecasts.ts'
import { seededEvent } from '../../seed/index.ts'
import { inLongForm } from '../browser/longForm.ts'

const { played } = seededEvent()

test('The demo’s forecasts are of its matches from the fourth on, in the order in which they were played', () => {
  expect(forecasts.map(({ match }) => match)).toEqual(played.slice(seenFirst).map(({ match }) => match.id))
  const records = forecasts.map(({ body }) => body.records)
  expect(records).toEqual(records.toSorted((a, b) => a - b))
})

// All of them take half a minute; the first says something of what is seldom, too: teams that nobody has seen.
test.each(inLongForm ? forecasts.map((_, k) => k) : [0])(
  'Forecast %i is what the code computes from the records before it',
  (k) => {
    expect(JSON.parse(JSON.stringify(forecastBefore(seenFirst + k)))).toEqual(forecasts[k])
  },
)
