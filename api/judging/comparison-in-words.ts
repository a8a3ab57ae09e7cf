import { figure, percent } from '#api/words/numbers.ts'
import type { AgainstReference } from './against-reference.ts'
import type { Noise } from './noise.ts'

const ways = {
  paired: 'Levels are compared by differences within blocks (paired t).',
  model:
    'Levels are compared by one mixed model of all rows (REML; level fixed, block random; Satterthwaite).',
  pooled: 'Levels are compared as independent units with one pooled spread.',
} as const

/** How levels were compared, a sentence each, in the terms of statistics. */
export function comparisonInWords(
  { method, family, confidence, notes }: Omit<AgainstReference, 'at'>,
  noise: Pick<Noise, 'rms' | 'upperRms' | 'df' | 'from'> | undefined,
): string[] {
  const limits = percent(Number(confidence.toFixed(6)))
  const families = {
    'each alone': `Limits are one-sided at ${limits}, each level by itself.`,
    dunnett: `Limits are one-sided at ${limits} for all arms at once (Dunnett), on arm${method === 'pooled' ? '' : ' + block'}.`,
    bonferroni: `Limits are one-sided at ${limits} for all arms at once (Bonferroni).`,
  } as const
  return [
    family === 'dunnett' && method !== 'pooled' ? 'Levels are compared in complete blocks.' : ways[method],
    families[family],
    ...notes,
    ...(noise ? [noiseInWords(noise)] : []),
  ]
}

function noiseInWords({ rms, upperRms, df, from }: Pick<Noise, 'rms' | 'upperRms' | 'df' | 'from'>): string {
  const known = df === undefined ? '' : ` on ${figure(df, 1)} degrees of freedom`
  return `The measuring error comes from ${from}: root mean square ${figure(rms)}${known}, upper limit ${figure(upperRms)}. The deciding upper limit is the largest of raw, net, and net of that upper limit; the lower is the smaller of raw and net.`
}
