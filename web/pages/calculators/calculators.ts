import type { ComponentType } from 'preact'
import { AcidAndStartPh } from '#web/pages/calculators/acid.tsx'
import { BoilingPoint } from '#web/pages/calculators/boiling-point.tsx'
import { ColourDifference } from '#web/pages/calculators/colour-difference.tsx'
import { DepthAndStock } from '#web/pages/calculators/depth-and-stock.tsx'
import { Exhaustion } from '#web/pages/calculators/exhaustion.tsx'
import { GradeCalculator } from '#web/pages/calculators/grade.tsx'
import { Rescale } from '#web/pages/calculators/rescale.tsx'
import { RinseFall } from '#web/pages/calculators/rinse-fall.tsx'
import { RunsNeeded } from '#web/pages/calculators/runs-needed.tsx'
import type { Studio } from '#web/pages/calculators/studio.ts'
import { SwapAcids } from '#web/pages/calculators/swap-acids.tsx'

export const shelves = ['At the stove', 'Colour', 'Planning'] as const

export type Calculator = {
  /** The last part of its address. */
  readonly name: string
  readonly title: string
  readonly says: string
  readonly shelf: (typeof shelves)[number]
  readonly part: ComponentType<{ readonly studio: Studio }>
}

const on = (
  shelf: Calculator['shelf'],
  name: string,
  title: string,
  says: string,
  part: Calculator['part'],
): Calculator => ({ shelf, name, title, says, part })

const depthSays = 'How much dye, and how much of a stock holds it.'
const rescaleSays = 'A recipe for another weight of yarn, and whether the pot holds it.'
const swapSays = 'Citric acid for vinegar, by the acid they carry.'
const differenceSays = 'Two colours, every usual formula, and which way it went.'

/** Every calculator, in the order of the list. */
export const calculators: readonly Calculator[] = [
  on('At the stove', 'depth-and-stock', 'Depth and stock', depthSays, DepthAndStock),
  on('At the stove', 'acid-and-start-ph', 'Acid and start pH', 'Before the yarn goes in.', AcidAndStartPh),
  on('At the stove', 'rescale', 'Rescale', rescaleSays, Rescale),
  on('At the stove', 'swap-of-acids', 'Swap of acids', swapSays, SwapAcids),
  on('At the stove', 'rinse-fall', 'Rinse fall', 'How fast water clears by dilution alone.', RinseFall),
  on(
    'At the stove',
    'boiling-point',
    'Boiling point',
    'How hot pot and steam can get where you are.',
    BoilingPoint,
  ),
  on('Colour', 'colour-difference', 'Colour difference', differenceSays, ColourDifference),
  on('Colour', 'grade', 'Grade', 'Change, staining, and light by blue wools.', GradeCalculator),
  on('Colour', 'exhaustion', 'Exhaustion', 'How much of the dye the yarn has taken.', Exhaustion),
  on('Planning', 'runs-needed', 'Runs needed', 'How many sessions settle a question.', RunsNeeded),
]
