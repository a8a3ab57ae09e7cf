import { expect, test } from 'vitest'
import { rinseFace, rinseScales } from '#api/science/pictures/rinse-marks.ts'
import type { RinsePicture } from '#api/science/pictures/rinse-picture.ts'
import { plotOf } from '#test/support/a-picture.ts'
import { boxesOfText, touching } from '#test/support/boxes-of-text.ts'

const picture: RinsePicture = {
  title: 'How the rinse water cleared',
  says: '',
  finding: '',
  measured: {
    label: '0 min of steam',
    points: [100, 34, 19, 11.5, 7.3, 5, 3.5, 2.4, 1.8].map((share, at) => ({ at, share })),
  },
  dilution: {
    label: 'dilution alone, 20 mL a gram',
    points: [0, 1, 2, 3].map((at) => ({ at, share: 100 * 0.056 ** at })),
  },
  clear: { at: 1.5, label: 'clear to the eye, about 1.5 %' },
  remark: 'flatter than dilution: dye still leaves the fibre',
}

test('the axis goes by powers of ten, to one below the least that was measured or counts as clear', () => {
  expect(rinseScales(picture).y.ticks.map((tick) => Math.round(Math.log10(tick)))).toEqual([-1, 0, 1, 2])
})

test.each([300, 480])('at %i px the names of the lines keep off each other', (width) => {
  const { x, y } = rinseScales(picture)
  const straightY = plotOf(
    { width, height: 300 },
    { x, y: { from: Math.log10(y.from), to: Math.log10(y.to) } },
  )
  const frame = { ...straightY, y: (share: number) => straightY.y(Math.log10(share)) }
  const marks = rinseFace(picture, frame)
  expect(touching(marks)).toEqual([])
  expect(boxesOfText(marks).map(({ words }) => words)).toEqual(
    expect.arrayContaining(['bath', '8', '0 min of steam']),
  )
})
