import { bounds, isVariable, variableKeys } from '#api/contract/bounds.ts'
import { outcomeKind } from '#api/contract/outcomes.ts'
import type { Column } from '#api/contract/table.ts'
import type { Factor } from '#api/contract/trial.ts'

/** What a column may mean, without its heading. */
export type Meaning = Omit<Column, 'heading' | 'unit' | 'wear'>
export type MeaningGroup = { readonly name: string; readonly meanings: readonly Meaning[] }

const fibres = ['wool', 'nylon', 'cotton', 'silk', 'alpaca', 'acrylic', 'polyester', 'viscose']
const ownWords: Partial<Record<Column['as'], string>> = {
  vessel: 'packet or pot',
  lot: 'dye lot',
  card: 'light card',
  equipment: 'which pot',
  item: 'item on the card',
  frame: 'photo',
  mass: 'weight, g',
  'lost because': 'lost because',
  ignore: 'not used',
}

/** Everything that a column can be said to mean, in groups, for the list in its second line. */
export function meaningGroups(heading: string, factors: readonly Factor[]): readonly MeaningGroup[] {
  const lab = (['L', 'a', 'b'] as const).flatMap((as): Meaning[] => [
    { as, when: 'before' },
    { as, when: 'after' },
    { as },
  ])
  const outcome = (kind: string): Meaning => ({ as: 'outcome', kind })
  return [
    { name: 'No meaning', meanings: [{ as: 'ignore' }] },
    {
      name: 'Which piece',
      meanings: (
        [
          'session',
          'place',
          'skein',
          'vessel',
          'lot',
          'base',
          'mass',
          'card',
          'item',
          'frame',
          'equipment',
        ] as const
      ).map((as) => ({ as })),
    },
    {
      name: 'Levels',
      meanings: [
        ...factors.map((factor): Meaning => ({ as: 'level', factor: factor.key })),
        ...(heading === '' ? [] : [{ as: 'level' as const, factor: heading }]),
      ],
    },
    { name: 'Colour', meanings: lab },
    {
      name: 'Results',
      meanings: [
        ...['rinses to 4', 'felting', 'dE00'].map(outcome),
        { as: 'outcome', kind: 'change grade', when: 'after' },
        ...fibres.map((fibre): Meaning => ({ as: 'outcome', kind: 'staining', when: 'after', fibre })),
        { as: 'outcome', kind: 'dye left', of: 'vessel' },
        { as: 'outcome', kind: 'pH', of: 'vessel' },
        ...['evenness', 'handle', 'shortening', 'lightness', 'spread'].map(outcome),
        ...(heading === '' ? [] : [outcome(heading)]),
        { as: 'worn', axis: 'W2' },
        { as: 'worn', axis: 'X1 days' },
        { as: 'lost because' },
      ],
    },
    { name: 'Conditions', meanings: variableKeys.map((key) => ({ as: 'condition', key })) },
  ]
}

/** One text for one meaning, as the value of a list. */
export function meaningKey(meaning: Meaning | Column): string {
  const { as, factor, when, axis, kind, fibre, text, of, level, role, key } = meaning
  return [as, factor, when, axis, kind, fibre, text, of === 'skein' ? '' : of, level, role, key].join('|')
}

/**
 * A meaning in words, as short as it can be.
 *
 * @example
 * meaningWords({ as: 'L', when: 'before' }, []) // 'L* before'
 * @example
 * meaningWords({ as: 'outcome', kind: 'staining', fibre: 'wool', when: 'after' }, []) // 'staining of wool'
 */
export function meaningWords(meaning: Meaning | Column, factors: readonly Factor[]): string {
  switch (meaning.as) {
    case 'L':
    case 'a':
    case 'b':
      return [`${meaning.as}*`, meaning.when].filter(Boolean).join(' ')
    case 'level':
      return levelWords(meaning.factor ?? '', factors)
    case 'condition':
      return isVariable(meaning.key ?? '') ? variableWords(meaning.key ?? '') : (meaning.key ?? '')
    case 'worn':
      return meaning.axis === 'W2'
        ? 'washes so far'
        : `${meaning.axis ?? ''} so far`.replace('X1 days', 'days in the window')
    case 'outcome':
      return outcomeWords(meaning)
    default:
      return ownWords[meaning.as] ?? meaning.as
  }
}

function levelWords(key: string, factors: readonly Factor[]): string {
  if (key === 'steamTime') return 'steam, min'
  if (isVariable(key)) return variableWords(key)
  const label = factors.find((factor) => factor.key === key)?.label ?? key
  return factors.some((factor) => factor.key === key) ? label : `levels: ${label}`
}

function variableWords(key: string): string {
  if (!isVariable(key)) return key
  const { label, unit } = bounds[key]
  const words = /^(?:pH|[A-Z]{2}|[Lab]\*)/.test(label)
    ? label
    : label.charAt(0).toLowerCase() + label.slice(1)
  return unit === '' ? words : `${words}, ${unit}`
}

const shortOutcomes: Readonly<Record<string, string>> = {
  'rinses to 4': 'rinses to 4',
  dE00: 'loss, ΔE00',
  'change grade': 'change grade',
  'dye left': 'dye left, %',
  pH: 'pH',
  lightness: 'L* alone',
}

function outcomeWords({ kind = '', fibre, text, of, level, role }: Meaning | Column): string {
  const { label } = outcomeKind(kind)
  const name = shortOutcomes[kind] ?? (label === kind ? kind : label.charAt(0).toLowerCase() + label.slice(1))
  const more = [
    name,
    text === undefined ? '' : text,
    fibre === undefined ? '' : `of ${fibre}`,
    level === undefined ? (of === 'part' ? '(own part)' : '') : `after ${level}`,
    role === undefined ? '' : '(dark twin)',
  ]
  return more.filter(Boolean).join(' ')
}
