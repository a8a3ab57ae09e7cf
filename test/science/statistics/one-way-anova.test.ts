import { expect, test } from 'vitest'
import { groupMoments, type OneWayAnova, oneWayAnova } from '#api/science/statistics/one-way-anova.ts'
import AtmWtAg from '#test/reference/stats/nist/AtmWtAg.json' with { type: 'json' }
import SiRstv from '#test/reference/stats/nist/SiRstv.json' with { type: 'json' }
import SmLs01 from '#test/reference/stats/nist/SmLs01.json' with { type: 'json' }
import SmLs04 from '#test/reference/stats/nist/SmLs04.json' with { type: 'json' }
import SmLs07 from '#test/reference/stats/nist/SmLs07.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// NIST Statistical Reference Datasets, certified values. The values of SmLs07 begin with 13 constant digits, so that
// the numbers that hold them have room for about 4 more: no arithmetic can give back what was rounded there.
test.each([
  [SiRstv, 1e-12],
  [SmLs01, 1e-12],
  [AtmWtAg, 1e-9],
  [SmLs04, 1e-9],
  [SmLs07, 2e-4],
] as const)('$id', ({ data, certified }, relative) => {
  const found = oneWayAnova(groupMoments(data.groups.map(({ y }) => y))) as OneWayAnova
  expect([found.dfBetween, found.dfWithin]).toEqual([certified.between.df, certified.within.df])
  expectClose(found.F, certified.F.value, relative)
  expectClose(found.ssBetween, certified.between.ss.value, relative)
  expectClose(found.ssWithin, certified.within.ss.value, relative)
  expectClose(found.msWithin, certified.within.ms.value, relative)
  expectClose(found.etaSquared, certified.rSquared.value, relative)
})
