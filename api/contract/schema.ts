import { z } from '@hono/zod-openapi'
import { faultInWords } from './faults.ts'

// One error map for the whole contract, set where every schema gets its `z` from.
z.config({ customError: faultInWords })

export { z }
