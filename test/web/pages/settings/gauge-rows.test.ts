import { expect, test } from 'vitest'
import { gaugeRows } from '#web/pages/settings/gauge-rows.ts'

test('a spreadsheet with heads, tabs and decimal commas is read as it is', () => {
  const { things, readOnce, unread } = gaugeRows(
    'thing\tL*\ta*\tb*\nteal 1\t45,1\t-20\t-11,5\nteal 1\t45,3\t-20,2\t-11,4\r\ngrey\t60\t0\t0\n',
  )
  expect(things).toEqual([
    {
      name: 'teal 1',
      readings: [
        { L: 45.1, a: -20, b: -11.5 },
        { L: 45.3, a: -20.2, b: -11.4 },
      ],
    },
  ])
  expect([readOnce, unread]).toEqual([['grey'], []])
})

test.each(['A;50;1;2\nA;51;1;2', 'A 50 1 2\nA 51 1 2', 'A,50.0,1,2\nA,51.0,1,2', 'A 50, 1, 2\nA 51, 1, 2'])(
  'cells may be parted as in %j',
  (text) => {
    expect(gaugeRows(text).things[0]?.readings.map(({ L }) => L)).toEqual([50, 51])
  },
)

test('a line that cannot be read is named by its number; an impossible colour is none', () => {
  expect(gaugeRows('A 50 1 2\nA 51 about 2\nA 150 1 2').unread.map(({ line }) => line)).toEqual([2, 3])
})
