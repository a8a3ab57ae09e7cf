import type { Setting } from '#api/contract/setting.ts'

/** How this studio measures, and what it usually has: from the settings, or else what most have. */
export type Studio = {
  readonly weightUnits: readonly string[]
  readonly volumeUnits: readonly string[]
  /** The units that stand there first. */
  readonly weight: string
  readonly volume: string
  /** Usual values, as they are typed; a blank is not known. */
  readonly usual: Readonly<Record<UsualKey, string>>
}

export type UsualKey =
  | 'stockPercent'
  | 'liquorRatio'
  | 'scaleStepGrams'
  | 'acidStrengthPercent'
  | 'waterAlkalinity'
  | 'altitudeMetres'
  | 'yarnWetness'
  | 'margin'

type System = 'metric' | 'us' | 'imperial'

const weights: Readonly<Record<System, readonly string[]>> = {
  metric: ['g', 'kg', 'oz', 'lb'],
  us: ['oz', 'lb', 'g', 'kg'],
  imperial: ['oz', 'lb', 'g', 'kg'],
}
const own: Readonly<Record<System, readonly string[]>> = {
  metric: ['mL', 'L', 'tsp (metric)', 'tbsp (metric)', 'cup (metric)'],
  us: ['cup (US)', 'tsp (US)', 'tbsp (US)', 'fl oz (US)', 'pint (US)', 'quart (US)', 'gallon (US)'],
  imperial: [
    'fl oz (imperial)',
    'pint (imperial)',
    'cup (imperial)',
    'quart (imperial)',
    'gallon (imperial)',
  ],
}
const rest = ['mL', 'cL', 'dL', 'L', 'tbsp (Australian)', 'dessertspoon (metric)', 'cup (US label)']

const usualElsewhere: Studio['usual'] = {
  stockPercent: '1',
  liquorRatio: '30',
  scaleStepGrams: '0.1',
  acidStrengthPercent: '5',
  waterAlkalinity: '',
  altitudeMetres: '',
  yarnWetness: '1.2',
  margin: '1',
}

/**
 * What the calculators begin with. A system puts its own units first; every other measure of the kitchen stays in reach.
 *
 * @example
 * studioOf([{ key: 'units', value: { system: 'us' } }]).weight // 'oz'
 * @example
 * studioOf([]).usual.stockPercent // '1'
 */
export function studioOf(settings: readonly Pick<Setting, 'key' | 'value'>[]): Studio {
  const value = (key: Setting['key']): Readonly<Record<string, unknown>> =>
    settings.find((it) => it.key === key)?.value ?? {}
  const system = systemOf(value('units').system)
  const kept = Object.entries(value('usual')).map(([key, number]) => [
    key,
    number === null ? '' : String(number),
  ])
  const volumes = [...own[system], ...rest, ...own.metric, ...own.us, ...own.imperial]
  return {
    weightUnits: weights[system],
    volumeUnits: [...new Set(volumes)],
    weight: weights[system][0] ?? 'g',
    volume: own[system][0] ?? 'mL',
    usual: { ...usualElsewhere, ...(Object.fromEntries(kept) as Partial<Studio['usual']>) },
  }
}

/** Whatever stands in the settings, one of the three. */
function systemOf(value: unknown): System {
  return value === 'us' || value === 'imperial' ? value : 'metric'
}
