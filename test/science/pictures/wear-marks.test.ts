import { formatHex } from 'culori'
import { expect, test } from 'vitest'
import { wearFace, wearPieces, wearScales } from '#api/science/pictures/wear-marks.ts'
import type { WearPicture } from '#api/science/pictures/wear-picture.ts'
import { plotOf } from '#test/support/a-picture.ts'
import { boxesOfText, touching } from '#test/support/boxes-of-text.ts'

const ends: [string, number][] = [
  ['0', 11.13],
  ['10', 5.16],
  ['20', 2.32],
  ['35', 1.02],
  ['50', 1.02],
  ['75', 1.01],
]
const washes: WearPicture = {
  title: 'Loss as the washes add up',
  says: '',
  finding: '',
  axis: { label: 'Washes', unit: 'washes' },
  outcomeLabel: 'loss',
  ticks: [
    { at: 0, label: 'before' },
    { at: 1, label: '1 wash', short: '1' },
    { at: 2, label: '2' },
    { at: 3, label: '3 washes', short: '3' },
  ],
  groups: ends.map(([short, mean]) => ({
    key: short,
    label: `${short} min`,
    short,
    chosen: short === '35',
    points: [
      { at: 0, mean: 0 },
      { at: 3, mean, lower: mean - 0.3, upper: mean + 0.3 },
    ],
  })),
}

test('a line is dotted where it passes a wash after which nothing was read', () => {
  const points = [0, 1, 3].map((at) => ({ at, mean: at }))
  expect(wearPieces(points, [0, 1, 2, 3]).map(({ read }) => read)).toEqual([true, false])
})

test('readings are joined in the order of wear, however they came', () => {
  const pieces = wearPieces(
    [3, 0, 1].map((at) => ({ at, mean: at })),
    [],
  )
  expect(pieces.map(({ from, to }) => [from.at, to.at])).toEqual([
    [0, 1],
    [1, 3],
  ])
})

test('one reading alone makes no line', () => {
  expect(wearPieces([{ at: 0, mean: 0 }], [0])).toEqual([])
})

test('groups that end at the same figure share a label; the chosen one keeps its own', () => {
  const scales = wearScales(washes)
  const frame = plotOf({ width: 440 - scales.right, height: 400 }, scales)
  const marks = wearFace(washes, frame)
  expect(boxesOfText(marks).map(({ words }) => words)).toEqual(
    expect.arrayContaining(['0 min, 11.1', '10 min, 5.2', '20 min, 2.3', '35 min, 1.0', '50 and 75, 1.0']),
  )
  expect(touching(marks)).toEqual([])
})

test('the room at the right holds the longest label', () => {
  const scales = wearScales(washes)
  const widest = Math.max(
    ...boxesOfText(wearFace(washes, plotOf({ width: 300, height: 400 }, scales))).map(({ box }) => box.width),
  )
  expect(scales.right).toBeGreaterThan(widest + 14)
})

// The hex of the chip as culori gives it.
test('yarn is named beside a chip of its own colour on its own grey', () => {
  const groups = washes.groups
    .slice(0, 1)
    .map((group) => ({ ...group, label: 'navy', colour: { L: 25, a: 2, b: -24 } }))
  const marks = wearFace({ ...washes, groups }, plotOf({ width: 400, height: 300 }, wearScales(washes)))
  expect(marks.filter((mark) => mark.kind === 'box').map(({ fill }) => fill)).toEqual([
    'grey',
    formatHex({ mode: 'lab65', l: 25, a: 2, b: -24 }),
  ])
})
