import { expect, test } from 'vitest'
import { judgedTrial } from '#api/judging/judged-trial.ts'
import { measuredAlike } from '#api/judging/measured-alike.ts'
import type { ReadingSeen } from '#db/trial-record.ts'
import { aReading } from '#test/support/a-reading.ts'
import { recordOf } from '#test/support/a-record.ts'
import { aCondition } from '#test/support/asked-of.ts'

const washed = { W2: 3 }
const loss = aCondition({ question: 'no-worse', outcome: 'dE00', wear: washed, margin: 1 })

function alike(
  after: Partial<ReadingSeen>,
  before: Partial<ReadingSeen> = {},
  more: readonly ReadingSeen[] = [],
) {
  const record = recordOf({ skeins: [{ code: 'A' }, { code: 'part', cutFrom: 'A' }] })
  const readings = [
    aReading({ skein: 'A', sitting: 'one', lab: [50, 0, 0], ...before }),
    aReading({ skein: 'A', sitting: 'two', lab: [51, 0, 0], wear: washed, ...after }),
  ]
  return measuredAlike(judgedTrial({ ...record, readings: [...readings, ...more] }), loss)
}

test('one way before and after is alike, and what is not said is D65 and 10°', () => {
  expect(alike({})).toEqual({ alike: true, typed: 0, found: [] })
  expect(alike({ illuminant: null, observer: '10°' }).alike).toBe(true)
})

test.each([
  [{ instrumentId: '#other' }, '1 skein was read with another instrument after the wear than before.'],
  [{ illuminant: 'A' }, '1 skein was read under another illuminant after the wear than before.'],
  [{ observer: '2' }, '1 skein was read for another observer after the wear than before.'],
  [{ apertureMm: 8 }, '1 skein was read with another geometry or aperture after the wear than before.'],
  [{ spotsN: 3 }, '1 skein was read at another number of spots after the wear than before.'],
  [{ wet: true }, '1 skein was read wet one time and dry the other.'],
])('a reading after the wear with %o is not alike', (after, says) => {
  expect(alike(after)).toMatchObject({ alike: false, found: [says] })
})

test('another number of placings is not alike, and a wet reading beside the dry one does no harm', () => {
  const again = aReading({ skein: 'A', sitting: 'two', lab: [51, 0, 0], wear: washed, placing: 2 })
  expect(alike({}, {}, [again]).found).toEqual([
    '1 skein was read more often in a sitting one time than the other.',
  ])
  expect(alike({}, {}, [{ ...again, wet: true, sittingId: '#rack' }]).alike).toBe(true)
})

test('a part without a reading of its own is held against its parent’s', () => {
  const part = aReading({
    skein: 'part',
    sitting: 'two',
    lab: [51, 0, 0],
    wear: washed,
    instrumentId: '#other',
  })
  expect(alike({}, {}, [part]).found).toEqual([
    '1 skein was read with another instrument after the wear than before.',
  ])
})

test('colours before any wear are held against each other', () => {
  const record = recordOf({ skeins: [{ code: 'A' }, { code: 'B' }, { code: 'C' }] })
  const readings = ['A', 'B', 'C'].map((skein) =>
    aReading({ skein, sitting: 'one', lab: [50, 0, 0], instrumentId: skein === 'C' ? '#other' : '#meter' }),
  )
  const colours = aCondition({ question: 'alike', outcome: 'colour', margin: 2 })
  expect(measuredAlike(judgedTrial({ ...record, readings }), colours).found).toEqual([
    '1 skein was read with another instrument than the others.',
  ])
})

test('differences that were typed in without their readings are counted', () => {
  const result = { kind: 'dE00', value: 1, wear: washed, basis: 'own' }
  const record = recordOf({
    skeins: [
      { code: 'A', results: [result] },
      { code: 'B', results: [{ ...result, by: [1, 0, 0] }] },
      { code: 'twin', role: 'twin', results: [result] },
    ],
  })
  expect(measuredAlike(judgedTrial(record), loss)).toEqual({ alike: true, typed: 1, found: [] })
})
