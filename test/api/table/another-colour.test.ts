import { expect, test } from 'vitest'
import { checkTable } from '#api/table/check-table.ts'

const heads = 'session,place,steam time [min],L0,a0,b0,L1,a1,b1'
const check = (after: string) =>
  checkTable(
    {
      keep: 'all',
      between: { W2: 3 },
      text: `${heads}\n1,1,35,30,20,-10,${after}\n1,2,75,30,20,-10,31,20,-10\n`,
    },
    { factors: [] },
  )

// Plum to moss green: far more than 40 by CIEDE2000, as fading never goes.
test('another colour altogether after a wash is asked about, a faded one is not', async () => {
  const another = await check('45,-35,40')
  expect(another.doubts.map(({ detail }) => detail)).toEqual([
    expect.stringMatching(/It changed by \d+ ΔE00: more than fading does\. Is it the same skein\?/),
  ])
  expect((await check('34,18,-9')).doubts).toEqual([])
})
