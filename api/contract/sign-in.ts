import { z } from './schema.ts'

/** What is typed to come in. Blanks around it do not count. */
export const SignIn = z.object({ phrase: z.string().trim().min(1).max(200) }).openapi('SignIn')
export type SignIn = z.infer<typeof SignIn>
