import { feltingAtMost, lossWithin, rinsesAtMost, stainingAtLeast, worstLot } from './pattern-conditions.ts'
import type { PatternPlan } from './patterns.ts'

const sessions = { one: 'session', many: 'sessions' }
const jars = { one: 'jar', many: 'jars' }

/** P1: how short can steaming be? */
export const timeLadder: PatternPlan = {
  pattern: 'P1',
  name: 'A ladder of times',
  says: 'a ladder of steam times, four sessions',
  question: 'How short can steaming be?',
  factor: {
    key: 'steamTime',
    kind: 'number',
    stage: 'set',
    levels: [
      { label: '0' },
      { label: '10' },
      { label: '20' },
      { label: '35' },
      { label: '50' },
      { label: '75', reference: true },
    ],
  },
  bench: {
    sessionKind: 'stove',
    session: sessions,
    sessionHelp: 'a day, a steamer load',
    sessions: 4,
    vesselKind: 'packet',
    vessel: { one: 'packet', many: 'packets' },
    vesselHelp: 'steamed on its own',
    vesselsPerLevel: 1,
    skeinsPerVessel: 1,
    shares: 'heat',
    given: 'vessel',
  },
  block: 'session',
  rule: {
    conditions: [lossWithin(1), stainingAtLeast(4), rinsesAtMost(4), feltingAtMost(2)],
    offers: [],
    method: 'paired',
    confidence: 0.95,
  },
  held: ['base', 'dye and depth', 'acid', 'packet weight', 'cooling'],
}

/** P2: how much acid does a water and a base need? Judged by described limits, not by a test. */
export const acidLadder: PatternPlan = {
  pattern: 'P2',
  name: 'A ladder of acid',
  says: 'a ladder of acid on each base, three sessions',
  question: 'How much acid does my water need?',
  factor: {
    key: 'acid',
    kind: 'number',
    stage: 'dye',
    levels: [
      { label: '0' },
      { label: '15' },
      { label: '30' },
      { label: '60' },
      { label: '120', reference: true },
    ],
  },
  bench: {
    sessionKind: 'stove',
    session: sessions,
    sessionHelp: 'a water bath, a day',
    sessions: 3,
    vesselKind: 'jar',
    vessel: jars,
    vesselHelp: 'dyed on its own',
    vesselsPerLevel: 1,
    skeinsPerVessel: 1,
    shares: 'bath',
    given: 'vessel',
  },
  block: 'session',
  rule: {
    conditions: [
      {
        outcome: 'dye left',
        wear: {},
        end: 'low',
        against: 'none',
        question: 'within-limit',
        statistic: 'every unit',
        atMost: 6,
        direction: 'smaller is better',
      },
      {
        outcome: 'lightness',
        wear: {},
        end: 'low',
        against: 'next level',
        question: 'within-limit',
        margin: 1,
        direction: 'smaller is better',
      },
    ],
    offers: [stainingAtLeast(), rinsesAtMost()],
    method: 'paired',
    confidence: 0.95,
  },
  held: ['base', 'dye and depth', 'water', 'liquor ratio', 'peak and hold'],
}

/** P3: does this colourway stay? The worst dye lot decides. */
export const colourwayClaim: PatternPlan = {
  pattern: 'P3',
  name: 'A colourway, lot by lot',
  says: 'three dye lots, five washes, two graders',
  question: 'Is this colourway colourfast?',
  factor: { key: 'colourway', kind: 'category', stage: 'dye', levels: [{ label: 'this colourway' }] },
  bench: {
    sessionKind: 'stove',
    session: { one: 'dyeing', many: 'dyeings' },
    sessionHelp: 'a day, another bath',
    sessions: 3,
    vesselKind: 'pot',
    vessel: { one: 'lot', many: 'lots' },
    vesselHelp: 'yarn from one bath',
    vesselsPerLevel: 1,
    skeinsPerVessel: 1,
    shares: 'bath',
    given: 'vessel',
  },
  block: 'session',
  rule: {
    conditions: [
      worstLot('staining', { W2: 5 }, 'wool'),
      worstLot('staining', { W2: 5 }, 'nylon'),
      worstLot('change grade', { W2: 5 }),
      worstLot('staining', { W5: 1 }, 'wool'),
    ],
    offers: [],
    method: 'pooled',
    confidence: 0.95,
  },
  held: ['base', 'recipe', 'water', 'rinsing', 'soap'],
}

/** P5: what does a window do? A card is the exposure; lots are counted apart. */
export const lightCard: PatternPlan = {
  pattern: 'P5',
  name: 'A light card',
  says: 'a light card, read for ten weeks',
  question: 'What does my window do?',
  factor: { key: 'colourway', kind: 'category', stage: 'dye', levels: [{ label: 'this colourway' }] },
  bench: {
    sessionKind: 'light',
    session: { one: 'window', many: 'windows' },
    sessionHelp: 'inside the glass, ten weeks',
    sessions: 1,
    vesselKind: 'card',
    vessel: { one: 'card', many: 'cards' },
    vesselHelp: 'with blue wools, half under foil',
    vesselsPerLevel: 3,
    skeinsPerVessel: 1,
    shares: 'place in the window',
    given: 'skein',
  },
  block: 'vessel',
  rule: {
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
    offers: [
      {
        outcome: 'dE00',
        wear: { 'X1 days': 70 },
        end: 'low',
        against: 'none',
        question: 'open-against-covered',
        direction: 'smaller is better',
      },
    ],
    method: 'paired',
    confidence: 0.95,
  },
  held: ['window', 'foil', 'blue wools', 'place of reading'],
}

/** P0: how small a difference can be seen at all? */
export const gaugeCheck: PatternPlan = {
  pattern: 'P0',
  name: 'A check of the readings',
  says: 'hidden twins, read again on three days',
  question: 'How small a difference can I see?',
  factor: {
    key: 'twin',
    kind: 'category',
    stage: 'dry',
    levels: [{ label: 'as it is', reference: true }, { label: 'one step more' }],
  },
  bench: {
    sessionKind: 'bench',
    session: { one: 'day', many: 'days' },
    sessionHelp: 'a day of reading',
    sessions: 3,
    vesselKind: 'tray',
    vessel: { one: 'tray', many: 'trays' },
    vesselHelp: 'laid out to be read',
    vesselsPerLevel: 1,
    skeinsPerVessel: 3,
    shares: 'light',
    given: 'skein',
  },
  block: 'session',
  rule: {
    conditions: [
      {
        outcome: 'dE00',
        wear: {},
        end: 'low',
        against: 'none',
        question: 'sees',
        margin: 1,
        direction: 'smaller is better',
      },
    ],
    offers: [],
    method: 'paired',
    confidence: 0.95,
  },
  held: ['instrument', 'light', 'ground', 'places'],
}

/** A question of one’s own: levels against a reference, by their loss in the wash. */
export const ownPlan: PatternPlan = {
  pattern: 'own',
  name: 'My own way',
  says: 'levels of my own against a reference',
  question: '',
  factor: { key: '', kind: 'category', stage: 'dye', levels: [{ label: 'usual', reference: true }] },
  bench: {
    sessionKind: 'stove',
    session: sessions,
    sessionHelp: 'a day at the stove',
    sessions: 4,
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
  held: ['base', 'dye and depth', 'acid', 'water'],
}
