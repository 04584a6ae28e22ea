import { execFileSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { compare } from '../src/model/compare/index.ts'
import { airPlan, keptAir } from '../src/model/timing/index.ts'
import { request } from './comparison.ts'

/** Computes the season's comparison anew and keeps it beside the seed: `npx tsx seed/compute.ts`, some minutes. */
const file = new URL('comparison-result.json', import.meta.url).pathname
const airFile = new URL('comparison-air.json', import.meta.url).pathname
const report = compare(request, {
  progress: (done, total) => process.stderr.write(`\r${Math.round((100 * done) / total)} %`),
})
writeFileSync(file, JSON.stringify(report))
const air = request.options
  .filter(({ robot }) => robot.air)
  .map((option) => keptAir(option.id, airPlan(request.game, option)))
writeFileSync(airFile, JSON.stringify(air))
execFileSync('npx', ['biome', 'format', '--write', file, airFile])
process.stderr.write(`\rwritten to ${file}\n`)
