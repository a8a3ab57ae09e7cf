import * as colorDiff from 'color-diff'
import { differenceCiede2000 } from 'culori'
import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import { ciede2000All } from '#api/science/colour/ciede2000-all.ts'
import { labTriples } from '#api/science/colour/lab-triples.ts'
import { samplePairs } from './sample-colours.ts'
import { printRates, sideBySide } from './side-by-side.ts'

/** ΔE00 of many pairs: ours in bulk and alone, and two libraries. Each has its colours in the form it likes. */
export function benchCiede2000(): void {
  const pairs = samplePairs(100_000)
  const reference = labTriples(pairs.map((pair) => pair.reference))
  const sample = labTriples(pairs.map((pair) => pair.sample))
  const lab65 = ({ L, a, b }: { L: number; a: number; b: number }) => ({ mode: 'lab65' as const, l: L, a, b })
  const objects = pairs.map((pair) => [lab65(pair.reference), lab65(pair.sample)] as const)
  const oracle = differenceCiede2000()
  const things = pairs.length
  const sum = (of: (place: number) => number) => () => {
    let total = 0
    for (let place = 0; place < things; place++) total += of(place)
    return total
  }
  const rates = sideBySide([
    { name: 'ciede2000All', things, work: () => ciede2000All(reference, sample) },
    { name: 'culori', things, work: sum((i) => oracle(objects[i]![0], objects[i]![1])) },
    {
      name: 'color-diff',
      things,
      work: sum((i) => colorDiff.diff(pairs[i]!.reference as never, pairs[i]!.sample as never)),
    },
    {
      name: 'ciede2000, pair by pair',
      things,
      work: sum((i) => ciede2000(pairs[i]!.reference, pairs[i]!.sample)),
    },
  ])
  printRates('pairs', rates.slice(0, 3), 3.5)
  printRates('pairs', rates.slice(3))
}
