import { changeGrade } from '#api/science/fastness/change-grade.ts'
import { stainingGrade } from '#api/science/fastness/staining-grade.ts'
import { samplePairs } from './sample-colours.ts'
import { printRates, sideBySide } from './side-by-side.ts'

/** Grey-scale grades from L*a*b*. No library has them to compare with. */
export function benchGradings(): void {
  const pairs = samplePairs(100_000)
  const things = pairs.length
  const ratings = (grade: typeof changeGrade) => () => {
    let total = 0
    for (const { reference, sample } of pairs) total += grade(reference, sample).rating
    return total
  }
  const [change, staining] = sideBySide([
    { name: 'changeGrade (A05)', things, work: ratings(changeGrade) },
    { name: 'stainingGrade (A04)', things, work: ratings(stainingGrade) },
  ])
  printRates('pairs', [change!])
  printRates('pairs', [staining!])
}
