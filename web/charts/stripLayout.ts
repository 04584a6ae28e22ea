import type { LegReport, StageReport } from '../../src/model/leg/types.ts'
import { words } from '../words/catalogue.ts'

export interface StripLeg {
  id: string
  name: string
  report: LegReport
  /** Names of the stages by id; `drive` has its own. */
  stageNames: { [stage: string]: string }
  /** Points per match and second saved, by stage. */
  worth: { [stage: string]: number }
  /** How often a stage is done one after the other, where that is more than once. */
  repeats?: { [stage: string]: number }
  /** Stages that name a mechanism, and whether their time follows it. */
  hardware?: { [stage: string]: boolean }
}

export interface StripBar {
  leg: string
  stage: string
  name: string
  /** Row from the top: 0 is the drive's own line. */
  lane: number
  /** Seconds from the strip's start. */
  start: number
  finish: number
  /** Where the stage could end at the latest without delaying the leg. */
  floatUntil: number
  critical: boolean
  mean: number
  criticality: number
  worth: number | null
  /** How often it is done one after the other: once per piece of the load, or once. */
  repeats: number
  /** Whether its time follows a mechanism, or is its own beside one; not given: it names none. */
  hardware?: 'follows' | 'beside'
}

export interface StripSection {
  leg: string
  name: string
  start: number
  finish: number
  mean: number
  p10: number
  p90: number
  /** Seconds by which the average leg is longer than its bars, because stages wait for whichever is late. */
  waiting: number
  pieces: number[]
}

export interface StripLayout {
  bars: StripBar[]
  sections: StripSection[]
  lanes: number
  end: number
}

const together = 0.05

const isCritical = (stage: StageReport): boolean => stage.float < together

/** The drive takes its own line; then what the leg waits for, so that the critical path stays as high as it can. */
const placing = (stages: readonly StageReport[]): StageReport[] =>
  [...stages].sort(
    (a, b) =>
      Number(b.id === 'drive') - Number(a.id === 'drive') ||
      Number(isCritical(b)) - Number(isCritical(a)) ||
      a.earliestStart - b.earliestStart ||
      a.latestFinish - b.latestFinish,
  )

function lanesOf(stages: readonly StageReport[]): Map<string, number> {
  const lanes: [number, number][][] = []
  const result = new Map<string, number>()
  for (const stage of placing(stages)) {
    const from = stage.earliestStart
    const until = Math.max(stage.latestFinish, stage.earliestFinish)
    let lane = 0
    while (lanes[lane]?.some(([start, end]) => from < end - together && start < until - together)) lane++
    lanes[lane] = [...(lanes[lane] ?? []), [from, until]]
    result.set(stage.id, lane)
  }
  return result
}

const wholeLeg = (report: LegReport): StageReport => ({
  id: 'whole',
  mean: report.mean,
  earliestStart: 0,
  earliestFinish: report.mean,
  latestStart: 0,
  latestFinish: report.mean,
  float: 0,
  criticality: 1,
})

/**
 * Where the bars of a cycle stand: time to the right in seconds at mean durations, what overlaps the drive on the
 * lines under it, float after the bars that have some. Legs follow one another.
 */
export function stripLayout(legs: readonly StripLeg[]): StripLayout {
  const bars: StripBar[] = []
  const sections: StripSection[] = []
  let offset = 0
  const own = words().strip
  for (const { id, name, report, stageNames, worth, repeats, hardware = {} } of legs) {
    const stages = report.stages.length > 0 ? report.stages : [wholeLeg(report)]
    const lanes = lanesOf(stages)
    const length = Math.max(...stages.map((stage) => stage.earliestFinish))
    for (const stage of stages)
      bars.push({
        leg: id,
        stage: stage.id,
        name: stageNames[stage.id] ?? (stage.id === 'drive' ? own.drive : stage.id === 'whole' ? own.whole : stage.id),
        lane: lanes.get(stage.id)!,
        start: offset + stage.earliestStart,
        finish: offset + stage.earliestFinish,
        floatUntil: offset + Math.max(stage.earliestFinish, stage.latestFinish),
        critical: isCritical(stage),
        mean: stage.mean,
        criticality: stage.criticality,
        worth: worth[stage.id] ?? null,
        repeats: repeats?.[stage.id] ?? 1,
        ...(stage.id in hardware && { hardware: hardware[stage.id] ? 'follows' : 'beside' }),
      })
    sections.push({
      leg: id,
      name,
      start: offset,
      finish: offset + length,
      mean: report.mean,
      p10: report.p10,
      p90: report.p90,
      waiting: report.mean - length,
      pieces: (report.pieces ?? []).map((piece) => offset + piece.mean),
    })
    offset += length
  }
  return { bars, sections, lanes: 1 + Math.max(0, ...bars.map((bar) => bar.lane)), end: offset }
}
