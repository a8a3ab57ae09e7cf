import { colourDifference } from '#api/calculations/colour-difference.ts'
import { samplePairs } from './sample-colours.ts'
import { median } from './side-by-side.ts'

/** 100,000 pairs at the computing address: how long it reads, works out and writes. */
export function benchColourAddress(): void {
  // With one decimal the body is just within the 8 MiB that a request may have.
  const text = JSON.stringify({ pairs: samplePairs(100_000, { places: 1 }) })
  const times = { parse: [] as number[], compute: [] as number[], write: [] as number[] }
  let written = 0
  for (let round = -2; round < 7; round++) {
    const start = performance.now()
    const body: unknown = JSON.parse(text)
    const parsed = performance.now()
    const checked = colourDifference.quick?.(body)
    const reply = colourDifference.compute(checked as never)
    const computed = performance.now()
    written = JSON.stringify(reply).length
    const end = performance.now()
    if (round < 0) continue
    times.parse.push(parsed - start)
    times.compute.push(computed - parsed)
    times.write.push(end - computed)
  }
  const [parse, compute, write] = [times.parse, times.compute, times.write].map(median) as [
    number,
    number,
    number,
  ]
  const share = (100 * compute) / (parse + compute + write)
  console.log(`  body ${(text.length / 1e6).toFixed(1)} MB, reply ${(written / 1e6).toFixed(1)} MB`)
  for (const [name, ms] of Object.entries({ parse, 'check and compute': compute, write }))
    console.log(`  ${name.padEnd(44)} ${ms.toFixed(0).padStart(9)} ms`)
  console.log(`  → ${share.toFixed(0)} % of the time outside JSON (aim: 50 % at most)`)
}
