import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import { figureIn, numberIn, storyRows } from './story-rows.ts'

/** The four dark twins of the steam-time ladder, read again on its four days: ΔE00. */
export const darkTwins = [0.2, 0.4, 0.3, 0.3]

/** Root mean square of the dark twins, and their mean. */
export const twinNoise = {
  rms: Math.sqrt(darkTwins.reduce((sum, it) => sum + it * it, 0) / darkTwins.length),
  floor: darkTwins.reduce((sum, it) => sum + it, 0) / darkTwins.length,
  from: 'the dark twin, read again on the four days',
}

/** The limits of the ladder's rule beside its margin: staining and rinses from below, felting from above. */
export const ladderLimits = [
  { side: 'stain', atLeast: 4 },
  { side: 'rinses', atMost: 4 },
  { side: 'felt', atMost: 2, end: 'high' as const },
]

/** A skein of the ladder. */
export type LadderSkein = {
  readonly level: number
  readonly session: string
  readonly vessel: string
  readonly skein: string
  readonly later: readonly string[]
  readonly place: string | undefined
  readonly value: number
  readonly side: Readonly<Record<string, number | undefined>>
  readonly readings: number
  readonly spots: number
}

/** The steam-time ladder of the sample trials, one row a skein in its own packet and wash jar. */
export function steamLadder(): LadderSkein[] {
  return storyRows('steam-time-ladder.csv').map((row) => {
    const name = `${row.run}-${row.rack_place}`
    const before = { L: figureIn(row, 'L0'), a: figureIn(row, 'a0'), b: figureIn(row, 'b0') }
    const after = { L: figureIn(row, 'L1'), a: figureIn(row, 'a1'), b: figureIn(row, 'b1') }
    return {
      level: figureIn(row, 'steam_min'),
      session: `run ${row.run}`,
      vessel: `packet ${name}`,
      skein: name,
      later: [`jar ${name}`],
      place: row.rack_place,
      value: ciede2000(before, after),
      side: {
        stain: numberIn(row, 'stain_white_wool'),
        rinses: numberIn(row, 'rinses_to_4'),
        felt: numberIn(row, 'felt'),
      },
      readings: 2,
      spots: 5,
    }
  })
}
