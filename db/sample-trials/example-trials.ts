import type { RuleCondition } from '../tables.ts'
import { type StoryMap, storyMaps } from './story-maps.ts'

/** A trial of the example studio: its question, what is varied, its rule and its table. All of it is invented. */
export type ExampleTrial = {
  readonly story: StoryMap
  readonly title: string
  readonly question: string
  readonly pattern: 'P0' | 'P1' | 'P2' | 'P3' | 'P4' | 'P5' | 'P6' | 'P7'
  /** Within what is compared; a session where it is not said. */
  readonly block?: 'vessel' | 'parent'
  readonly factors: readonly {
    readonly key: string
    readonly stage?: 'remedy'
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
  /** Levels that the table does not name: of every skein whose code begins so. */
  readonly levelOfCode?: Readonly<Record<string, string>>
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
  question: 'within-limit',
  statistic: 'every unit',
  direction: 'smaller is better',
  ...more,
})

const worstLot = (wear: RuleCondition['wear']): RuleCondition =>
  limit('staining', { wear, statistic: 'worst lot', atLeast: 4, direction: 'larger is better' })

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
        limit('dE00', {
          wear: { W2: 3 },
          against: 'reference',
          question: 'no-worse',
          statistic: 'upper limit',
          margin: 1,
        }),
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
      plannedSessions: 3,
      lockedAt: '2026-03-16T10:05:00Z',
      conditions: [
        worstLot({ W2: 5 }),
        worstLot({ W5: 1 }),
        worstLot({ 'rub dry': 10 }),
        worstLot({ 'rub wet': 10 }),
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
    rule: {
      plannedSessions: 8,
      lockedAt: '2026-03-20T08:00:00Z',
      conditions: [
        {
          outcome: 'spread',
          wear: {},
          end: 'low',
          against: 'reference',
          question: 'better',
          direction: 'larger is better',
        },
      ],
    },
  },
  {
    story: storyMaps.windowLight,
    title: 'Six colours on a west window',
    question: 'What does our west window do?',
    pattern: 'P5',
    block: 'vessel',
    factors: [
      {
        key: 'colour',
        levels: [
          'food-grade pink',
          'food-grade blue',
          'food-grade red',
          'acid-dye turquoise',
          'acid-dye gold',
          'acid-dye navy',
        ],
      },
    ],
    levelOfCode: {
      'food-grade pink': 'food-grade pink',
      'food-grade blue': 'food-grade blue',
      'food-grade red': 'food-grade red',
      'acid-dye turquoise': 'acid-dye turquoise',
      'acid-dye gold': 'acid-dye gold',
      'acid-dye navy': 'acid-dye navy',
    },
    held: [{ key: 'window', value: 'west, inside the glass; half of each card under foil' }],
    rule: {
      plannedSessions: 3,
      lockedAt: '2026-01-05T09:00:00Z',
      conditions: [
        {
          outcome: 'dE00',
          wear: { 'X1 days': 70 },
          end: 'low',
          against: 'none',
          question: 'light',
          atLeast: 4,
          direction: 'smaller is better',
        },
      ],
    },
  },
  {
    story: storyMaps.scaleUp,
    title: 'From the 50 g sample to 1200 g',
    question: 'Does the sample’s recipe come out the same in big pots?',
    pattern: 'P6',
    factors: [{ key: 'batch size', levels: ['1200 g one pot', '400 g lot'] }],
    darkTwin: [
      { day: '2026-04-08', dE00: 0.2 },
      { day: '2026-04-10', dE00: 0.4 },
      { day: '2026-04-13', dE00: 0.3 },
    ],
    levelOfCode: { '1200 g one pot': '1200 g one pot', '400 g lot': '400 g lot' },
    held: [{ key: 'recipe', value: 'as the 50 g sample' }],
    rule: {
      plannedSessions: 3,
      lockedAt: '2026-04-02T08:00:00Z',
      conditions: [
        limit('dE00', { against: 'standard', question: 'to-standard', statistic: 'mean', atMost: 2 }),
        limit('dE00', { against: 'standard', question: 'to-standard', atMost: 3 }),
      ],
    },
  },
  {
    story: storyMaps.bleedingRescue,
    title: 'Rescuing eight skeins that bleed',
    question: 'What helps a skein that bleeds?',
    pattern: 'P4',
    block: 'parent',
    factors: [
      {
        key: 'remedy',
        stage: 'remedy',
        levels: ['cold water', 'cold vinegar', 'hot detergent', 'reheating with acid'],
        reference: 'cold water',
      },
    ],
    held: [{ key: 'contact', value: 'pressed damp on white wool' }],
    rule: {
      plannedSessions: 8,
      lockedAt: '2026-04-09T08:00:00Z',
      conditions: [
        {
          outcome: 'staining dE76',
          fibre: 'wool',
          wear: { W5: 1 },
          end: 'low',
          against: 'control',
          question: 'better',
          leastGain: 2,
          direction: 'smaller is better',
        },
      ],
    },
  },
  {
    story: storyMaps.phoneNoise,
    title: 'A phone by the window, four swatches',
    question: 'How small a difference can this phone see?',
    pattern: 'P0',
    factors: [{ key: 'shade', levels: ['plum', 'plum, a step on', 'gold', 'turquoise'] }],
    levelOfCode: { A: 'plum', B: 'plum, a step on', C: 'gold', D: 'turquoise' },
    held: [{ key: 'light', value: 'north window, white card' }],
    rule: {
      plannedSessions: 3,
      lockedAt: '2026-04-15T08:00:00Z',
      conditions: [limit('dE00', { question: 'sees', statistic: 'mean', margin: 1 })],
    },
  },
]
