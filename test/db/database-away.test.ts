import { expect, test } from 'vitest'
import { isDatabaseAway } from '#db/database-away.ts'

const withCode = (code: string, more: object = {}) => Object.assign(new Error('x'), { code, ...more })

// PostgreSQL 18 documentation, appendix A, and the codes of Node's system errors.
test.each([
  '57P01',
  '57P02',
  '57P03',
  '08006',
  '08001',
  '53300',
  '3D000',
  '28P01',
  'ECONNREFUSED',
  'ECONNRESET',
])('%s means that the database is away', (code) => {
  expect(isDatabaseAway(withCode(code))).toBe(true)
})

test.each(['23505', '40001', '57014', '22012', 'EACCES', 'ENOENT'])('%s does not', (code) => {
  expect(isDatabaseAway(withCode(code))).toBe(false)
})

test('a socket of the server that is not there means that it is away', () => {
  expect(isDatabaseAway(withCode('ENOENT', { syscall: 'connect' }))).toBe(true)
})

test('an error of our own code does not', () => {
  expect(isDatabaseAway(new TypeError('x is not a function'))).toBe(false)
})
