/**
 * Yates (1935), Suppl. J. R. Stat. Soc. 2, 181–247: a split plot. Six blocks; three varieties of oats on the plots of a
 * block; four amounts of nitrogen (hundredweight an acre) on the parts of a plot. Yields in quarter pounds.
 * Compared with the data set `oats` of the R package MASS.
 */
const yields: Readonly<Record<string, readonly (readonly number[])[]>> = {
  'Golden rain': [
    [117, 114, 161, 141],
    [70, 108, 126, 149],
    [60, 102, 89, 96],
    [64, 103, 132, 133],
    [80, 82, 94, 126],
    [89, 82, 86, 104],
  ],
  Marvellous: [
    [105, 140, 118, 156],
    [96, 124, 121, 144],
    [89, 129, 132, 124],
    [70, 89, 104, 117],
    [63, 70, 109, 99],
    [97, 99, 119, 121],
  ],
  Victory: [
    [111, 130, 157, 174],
    [61, 91, 97, 100],
    [68, 64, 112, 86],
    [74, 89, 81, 122],
    [62, 90, 100, 116],
    [53, 74, 118, 113],
  ],
}

export type OatsRow = { block: string; variety: string; nitrogen: string; yield: number }

export const oats: readonly OatsRow[] = Object.entries(yields).flatMap(([variety, blocks]) =>
  blocks.flatMap((parts, b) =>
    parts.map((value, n) => ({
      block: ['I', 'II', 'III', 'IV', 'V', 'VI'][b]!,
      variety,
      nitrogen: ['0.0', '0.2', '0.4', '0.6'][n]!,
      yield: value,
    })),
  ),
)

/** The same with a plot and three parts of plots lost. */
export const oatsWithLosses = oats.filter(
  ({ block, variety, nitrogen }) =>
    !(block === 'I' && variety === 'Victory' && nitrogen === '0.6') &&
    !(block === 'III' && variety === 'Golden rain' && ['0.0', '0.2'].includes(nitrogen)) &&
    !(block === 'V' && variety === 'Marvellous'),
)
