import { standard, variants } from '../../seed/standard.ts'
import { Planner } from '../../src/model/plan/index.ts'

// A process of its own per measurement: by how much (MB) its memory grows over the plan of one harder case, after the
// standard case has brought everything that every plan needs.
const wanted = process.argv[2] as keyof typeof variants
const collect = (globalThis as { gc?: () => void }).gc
if (!collect || !(wanted in variants)) throw new Error(`no case '${wanted}', or --expose-gc is missing`)
new Planner(standard.game).report(standard.option)
collect()
const before = process.memoryUsage.rss()
const { game, option } = variants[wanted]
new Planner(game).report(option)
console.log((process.resourceUsage().maxRSS * 1024 - before) / 1e6)
