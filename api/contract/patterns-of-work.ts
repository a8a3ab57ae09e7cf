import { feltingAtMost, lossWithin, rinsesAtMost, stainingAtLeast } from './pattern-conditions.ts'
import type { PatternPlan } from './patterns.ts'

const sessions = { one: 'session', many: 'sessions' }
const jars = { one: 'jar', many: 'jars' }

/** P4: the usual way against a shortcut or a remedy. */
export const twoArms: PatternPlan = {
  pattern: 'P4',
  name: 'Two ways side by side',
  says: 'the usual way and a shortcut, six sessions',
  question: 'Is the shortcut as good as the usual way?',
  factor: {
    key: 'way of working',
    kind: 'category',
    stage: 'dye',
    levels: [{ label: 'usual', reference: true }, { label: 'shortcut' }],
  },
  bench: {
    sessionKind: 'stove',
    session: sessions,
    sessionHelp: 'a day that holds both',
    sessions: 6,
    vesselKind: 'jar',
    vessel: jars,
    vesselHelp: 'treated on its own',
    vesselsPerLevel: 1,
    skeinsPerVessel: 1,
    shares: 'bath',
    given: 'vessel',
  },
  block: 'session',
  rule: {
    conditions: [lossWithin(1)],
    offers: [stainingAtLeast(), rinsesAtMost(), feltingAtMost()],
    method: 'paired',
    confidence: 0.95,
  },
  held: ['base', 'dye and depth', 'acid', 'water', 'cooling'],
}

/** P6: does a batch come out like the kept standard? */
export const repeatAndScale: PatternPlan = {
  pattern: 'P6',
  name: 'Repeat and scale',
  says: 'batches against the kept standard',
  question: 'Does the recipe come out the same again?',
  factor: {
    key: 'batch size',
    kind: 'category',
    stage: 'dye',
    levels: [{ label: 'standard', reference: true }, { label: 'repeat' }],
  },
  bench: {
    sessionKind: 'stove',
    session: sessions,
    sessionHelp: 'a day, another bath',
    sessions: 3,
    vesselKind: 'pot',
    vessel: { one: 'batch', many: 'batches' },
    vesselHelp: 'dyed on its own',
    vesselsPerLevel: 1,
    skeinsPerVessel: 3,
    shares: 'bath',
    given: 'vessel',
  },
  block: 'session',
  rule: {
    conditions: [
      {
        outcome: 'dE00',
        wear: {},
        end: 'low',
        against: 'standard',
        question: 'to-standard',
        atMost: 2,
        direction: 'smaller is better',
      },
      {
        outcome: 'dE00',
        wear: {},
        end: 'low',
        against: 'standard',
        question: 'to-standard',
        statistic: 'every unit',
        atMost: 3,
        direction: 'smaller is better',
      },
    ],
    offers: [],
    method: 'pooled',
    confidence: 0.95,
  },
  held: ['recipe', 'base', 'water', 'liquor ratio'],
}

/** P7: does a class’s acid schedule separate the colours? */
export const classSeparation: PatternPlan = {
  pattern: 'P7',
  name: 'Separation in a class',
  says: 'two acid schedules, a pot of each at six benches',
  question: 'Do the colours separate more with acid later?',
  factor: {
    key: 'acid schedule',
    kind: 'category',
    stage: 'dye',
    levels: [{ label: 'at the start', reference: true }, { label: 'in doses' }],
  },
  bench: {
    sessionKind: 'bench',
    session: { one: 'bench', many: 'benches' },
    sessionHelp: 'one pair of pots',
    sessions: 6,
    vesselKind: 'pot',
    vessel: { one: 'pot', many: 'pots' },
    vesselHelp: 'on its own burner',
    vesselsPerLevel: 1,
    skeinsPerVessel: 1,
    shares: 'bath',
    given: 'vessel',
  },
  block: 'session',
  rule: {
    conditions: [
      {
        outcome: 'spread',
        wear: {},
        end: 'low',
        against: 'reference',
        question: 'better',
        direction: 'larger is better',
      },
      { ...stainingAtLeast(4), wear: { W2: 1 } },
    ],
    offers: [],
    method: 'paired',
    confidence: 0.95,
  },
  held: ['base', 'dye mixture', 'water', 'heat'],
}

/** P8: does clear rinse water mean anything? */
export const rinsePredictor: PatternPlan = {
  pattern: 'P8',
  name: 'When to stop rinsing',
  says: 'skeins of several colours, stopped at 3, 4 and 5',
  question: 'Is clear rinse water enough?',
  factor: {
    key: 'stopped at',
    kind: 'number',
    stage: 'rinse',
    levels: [{ label: '3' }, { label: '4' }, { label: '5', reference: true }],
  },
  bench: {
    sessionKind: 'stove',
    session: { one: 'colour', many: 'colours' },
    sessionHelp: 'one dye bath each',
    sessions: 6,
    vesselKind: 'bowl',
    vessel: { one: 'bowl', many: 'bowls' },
    vesselHelp: 'rinsed on its own',
    vesselsPerLevel: 1,
    skeinsPerVessel: 1,
    shares: 'water',
    given: 'vessel',
  },
  block: 'session',
  rule: {
    conditions: [{ ...stainingAtLeast(4), wear: { W2: 2 } }],
    offers: [rinsesAtMost()],
    method: 'paired',
    confidence: 0.95,
  },
  held: ['base', 'depth', 'rinse volume', 'rinse temperature'],
}
