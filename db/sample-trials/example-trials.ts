import type { RuleCondition } from '../tables.ts'
import { type StoryMap, storyMaps } from './story-maps.ts'

/** A trial of the example studio: its question, what is varied, its rule and its table. All of it is invented. */
export type ExampleTrial = {
  readonly story: StoryMap
  readonly title: string
  readonly question: string
  readonly pattern: 'P1' | 'P2' | 'P3' | 'P7'
  readonly factors: readonly {
    readonly key: string
    readonly levels: readonly (string | number)[]
    readonly reference?: string | number
  }[]
  readonly held: readonly { readonly key: string; readonly value: string }[]
  readonly rule?: {
    readonly conditions: readonly RuleCondition[]
    readonly plannedSessions: number
    /** When it was locked, before the first session. */
    readonly lockedAt: string
  }
  readonly base?: string
  /** The day of each session, by its label. */
  readonly heldOn?: Readonly<Record<string, string>>
  /** A dark twin, read again on these days: ΔE00. */
  readonly darkTwin?: readonly { readonly day: string; readonly dE00: number }[]
}

const limit = (outcome: string, more: Partial<RuleCondition>): RuleCondition => ({
  outcome,
  wear: {},
  end: 'low',
  against: 'none',
  statistic: 'every unit',
  direction: 'smaller is better',
  ...more,
})

/**
 * The example studio: a stone dye shed on a hillside, hard spring water, retired mill cones overdyed with acid dyes.
 * Simulated with plausible spread and rounded; no check of correctness.
 */
export const exampleTrials: readonly ExampleTrial[] = [
  {
    story: storyMaps.steamTimeLadder,
    title: 'Steam time, teal on fawn cone',
    question: 'How short can steaming be?',
    pattern: 'P1',
    factors: [{ key: 'steamTime', levels: [0, 10, 20, 35, 50, 75], reference: 75 }],
    held: [
      { key: 'dye', value: 'teal acid dye, 1.5 % depth' },
      { key: 'acid', value: 'vinegar 52 mL per 100 g' },
      { key: 'packets', value: '10 g packets, all out together' },
      { key: 'cooling', value: 'cooled 2 h, lid off' },
    ],
    base: 'fawn mill cone, 80/20 wool and nylon',
    rule: {
      plannedSessions: 4,
      lockedAt: '2026-02-24T09:12:00Z',
      conditions: [
        limit('dE00', { wear: { W2: 3 }, against: 'reference', statistic: 'upper limit', margin: 1 }),
        limit('staining', { fibre: 'wool', wear: { W2: 3 }, atLeast: 4, direction: 'larger is better' }),
        limit('rinses to 4', { atMost: 4 }),
        limit('felting', { end: 'high', atMost: 2 }),
      ],
    },
    heldOn: { '1': '2026-02-25', '2': '2026-02-28', '3': '2026-03-04', '4': '2026-03-07' },
    darkTwin: [
      { day: '2026-02-25', dE00: 0.2 },
      { day: '2026-02-28', dE00: 0.4 },
      { day: '2026-03-04', dE00: 0.3 },
      { day: '2026-03-07', dE00: 0.3 },
    ],
  },
  {
    story: storyMaps.acidByBase,
    title: 'Vinegar in hard water, three bases',
    question: 'How much vinegar does our hard water need?',
    pattern: 'P2',
    factors: [
      { key: 'acid', levels: [0, 15, 30, 60, 120] },
      { key: 'base', levels: ['superwash wool', 'wool/nylon 80/20', 'silk'] },
    ],
    held: [
      { key: 'dye', value: 'mid blue acid dye, 1 % depth' },
      { key: 'water', value: 'spring water, 180 mg/L CaCO3' },
      { key: 'jars', value: '8 g in 200 mL' },
    ],
    rule: {
      plannedSessions: 3,
      lockedAt: '2026-03-09T08:30:00Z',
      conditions: [
        limit('lightness', { against: 'next level', statistic: 'mean', margin: 1 }),
        limit('dye left', { atMost: 6 }),
      ],
    },
    heldOn: { '1': '2026-03-10', '2': '2026-03-11', '3': '2026-03-13' },
  },
  {
    story: storyMaps.colourwayWashClaims,
    title: 'Six colourways for the market',
    question: 'Is it colourfast?',
    pattern: 'P3',
    factors: [{ key: 'colourway', levels: ['oat', 'lichen', 'brick', 'plum', 'slate', 'deep turquoise'] }],
    held: [
      { key: 'base', value: 'fawn mill cone, 80/20 wool and nylon' },
      { key: 'grading', value: 'blind, median of two graders' },
    ],
    rule: {
      plannedSessions: 1,
      lockedAt: '2026-03-16T10:05:00Z',
      conditions: [
        limit('staining', {
          wear: { W2: 5 },
          statistic: 'worst lot',
          atLeast: 4,
          direction: 'larger is better',
        }),
        limit('staining', {
          wear: { W5: 1 },
          statistic: 'worst lot',
          atLeast: 4,
          direction: 'larger is better',
        }),
        limit('staining', {
          wear: { 'rub dry': 10 },
          statistic: 'worst lot',
          atLeast: 4,
          direction: 'larger is better',
        }),
        limit('staining', {
          wear: { 'rub wet': 10 },
          statistic: 'worst lot',
          atLeast: 4,
          direction: 'larger is better',
        }),
      ],
    },
  },
  {
    story: storyMaps.classSeparation,
    title: 'Acid in doses, eight benches',
    question: 'Does acid in doses keep the colours apart?',
    pattern: 'P7',
    factors: [
      { key: 'schedule', levels: ['all at start', 'two doses', 'four doses'], reference: 'all at start' },
    ],
    held: [{ key: 'dye', value: 'mixed food-grade green' }],
  },
]
