import { expect, test } from 'vitest'
import { worstStaining } from '#api/science/fastness/worst-staining.ts'

test('the headline is the worse of wool and nylon, whatever cotton did', () => {
  const wool = { fibre: 'wool', grade: '4-5' } as const
  const nylon = { fibre: 'nylon', grade: '3-4' } as const
  const cotton = { fibre: 'cotton', grade: '2' } as const
  expect(worstStaining([wool, nylon, cotton])).toEqual({ headline: nylon, worst: cotton })
  expect(worstStaining([cotton, nylon, wool])).toEqual({ headline: nylon, worst: cotton })
})

test('without wool and nylon there is no headline', () => {
  const cotton = { fibre: 'cotton', grade: '5' } as const
  expect(worstStaining([cotton])).toEqual({ headline: undefined, worst: cotton })
  expect(() => worstStaining([])).toThrow(RangeError)
})

test('of equal grades the first named stands', () => {
  const [one, two] = [{ fibre: 'nylon', grade: '4' } as const, { fibre: 'wool', grade: '4' } as const]
  expect(worstStaining([one, two]).headline).toEqual(one)
})
