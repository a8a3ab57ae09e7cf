import { benchCiede2000 } from './ciede2000.ts'
import { benchColourAddress } from './colour-address.ts'
import { benchGradings } from './gradings.ts'
import { benchPixels } from './pixels.ts'
import { benchSpectra } from './spectra.ts'
import { benchStatistics } from './statistics.ts'

/** Every group of benchmarks. `npm run bench` runs all; `npm run bench pixels spectra` those whose name holds a word. */
const groups: Readonly<Record<string, () => void | Promise<void>>> = {
  ciede2000: benchCiede2000,
  pixels: benchPixels,
  gradings: benchGradings,
  spectra: benchSpectra,
  'colour-address': benchColourAddress,
  statistics: benchStatistics,
}

const words = process.argv.slice(2)
const chosen = Object.entries(groups).filter(
  ([name]) => words.length === 0 || words.some((word) => name.includes(word)),
)
if (chosen.length === 0) {
  console.error(`There is no such group. The groups are ${Object.keys(groups).join(', ')}.`)
  process.exitCode = 1
}
for (const [name, run] of chosen) {
  console.log(name)
  await run()
}
