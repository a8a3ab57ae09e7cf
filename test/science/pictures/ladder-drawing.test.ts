import { describe, expect, test } from 'vitest'
import { ladderDrawing, sessionPoints } from '#api/science/pictures/ladder-drawing.ts'
import { ladderScales } from '#api/science/pictures/ladder-scales.ts'
import type { Mark } from '#api/science/pictures/marks.ts'
import { steamPicture } from '#test/support/a-picture.ts'
import { boxesOfText, outside, touching } from '#test/support/boxes-of-text.ts'

const wordsOf = (marks: readonly Mark[]): string[] => boxesOfText(marks).map(({ words }) => words)

// The means stand in the worked example of the trial: 11.13, 5.16, 2.32, 1.02, 1.02, 1.01.
test('the ladder shows every skein, every mean and where the rules meet', () => {
  const marks = ladderDrawing(steamPicture(), { width: 792, height: 520 })
  expect(marks.filter((mark) => mark.kind === 'dot' && mark.fill === 'light')).toHaveLength(24)
  expect(wordsOf(marks)).toEqual(
    expect.arrayContaining([
      '11.1',
      '5.2',
      '2.3',
      '1.0',
      '35 min',
      'the window: 35 minutes',
      'colour holds: 35, 50, 75',
    ]),
  )
})

describe.each([320, 360, 430, 560, 792])('at %i px', (width) => {
  const marks = ladderDrawing(steamPicture(), { width, height: width < 430 ? 360 : 520 })

  test('no two labels touch', () => {
    expect(touching(marks)).toEqual([])
  })

  test('no label leaves the drawing', () => {
    expect(outside(marks, width)).toEqual([])
  })
})

test('a loss is drawn from nought, a lightness from where it is', () => {
  expect(ladderScales(steamPicture(), { width: 792 }).y).toMatchObject({ from: 0, to: 12, step: 2 })
  const light = steamPicture({ fromZero: false, levels: lightness(), brackets: [] })
  const { margin: _margin, noise: _noise, window: _window, ...bare } = light
  expect(ladderScales(bare, { width: 792 }).y.from).toBeGreaterThanOrEqual(35)
})

test('levels on a numeric axis stand to scale, others in even steps', () => {
  const numeric = ladderScales(steamPicture(), { width: 792 }).x
  expect(numeric.from).toBeLessThan(0)
  expect(numeric.to).toBeGreaterThan(75)
  const named = ladderScales(steamPicture({ numeric: false, levels: lightness() }), { width: 792 }).x
  expect(named).toEqual({ from: -0.45, to: 1.55 })
})

test('two skeins of one session at one level are one point of its line: their mean', () => {
  const [line] = sessionPoints(
    steamPicture({
      sessions: [{ key: 'a', label: 'session 1' }],
      levels: [
        {
          ...level(0),
          skeins: [
            { code: '1', session: 'a', value: 1 },
            { code: '2', session: 'a', value: 3 },
          ],
        },
        level(1),
      ],
    }),
  )
  expect(line?.points).toEqual([{ x: 0, y: 2 }])
})

test('a lost skein keeps its level, its reason beside it', () => {
  const levels = [level(0), { ...level(1), lost: [{ code: 'bench 6', reason: 'boiled dry' }] }]
  const marks = ladderDrawing(steamPicture({ numeric: false, levels, brackets: [] }), {
    width: 500,
    height: 400,
  })
  expect(wordsOf(marks)).toContain('lost: bench 6, boiled dry')
  expect(marks.filter((mark) => mark.kind === 'dot' && mark.dash !== undefined)).toHaveLength(1)
})

test('many lost skeins are counted under the axis, each with its ring', () => {
  const lost = ['1', '2', '3', '4'].map((code) => ({ code, reason: 'spilt' }))
  const marks = ladderDrawing(
    steamPicture({ numeric: false, levels: [level(0), { ...level(1), lost }], brackets: [] }),
    {
      width: 500,
      height: 400,
    },
  )
  expect(wordsOf(marks)).toContain('lost: 4')
  expect(marks.filter((mark) => mark.kind === 'dot' && mark.dash !== undefined)).toHaveLength(4)
})

test('where names of levels would touch, the chosen one and the reference keep theirs', () => {
  const levels = Array.from({ length: 30 }, (_, x) => ({
    ...level(x),
    label: `${x + 100} minutes`,
    short: `${x + 100} min`,
    chosen: x === 12,
    reference: x === 29,
  }))
  const marks = ladderDrawing(steamPicture({ levels, brackets: [] }), { width: 360, height: 340 })
  expect(wordsOf(marks)).toEqual(expect.arrayContaining(['112 min', '129 min']))
  expect(touching(marks)).toEqual([])
})

test('a ladder without readings has its levels and an empty axis', () => {
  const {
    margin: _margin,
    noise: _noise,
    window: _window,
    ...bare
  } = steamPicture({ levels: [level(0), level(1)], brackets: [] })
  const marks = ladderDrawing(bare, { width: 500, height: 300 })
  expect(wordsOf(marks)).toEqual(expect.arrayContaining(['level 0', 'level 1', '0.0', '1.0']))
})

function level(x: number) {
  return { key: String(x), label: `level ${x}`, x, chosen: false, reference: false, skeins: [], lost: [] }
}

function lightness() {
  return [0, 1].map((x) => ({ ...level(x), skeins: [{ code: '1', session: 'run 1', value: 40 + x }] }))
}
