import { beforeEach, inject } from 'vitest'
import './provided.ts'

beforeEach((test) => {
  const missing = inject('missing')
  if (missing) test.skip(missing)
})
