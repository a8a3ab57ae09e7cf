import type { Journalled } from '#api/records/journal.ts'
import { skeinsOfTrial } from '#db/losses.ts'
import { presentTrial } from './present-trial.ts'

/** What is judged of a trial itself: its pattern, block, conditions and what it holds the same; not its words. */
export const judgedTrial: Journalled<'trial'> = {
  table: 'trial',
  noun: 'trial',
  measured: false,
  present: presentTrial,
  touches: async (tx, [trial]) => (trial ? skeinsOfTrial(tx, trial.id) : []),
  judged: {
    but: ['title', 'question', 'expectation', 'seed', 'archivedAt'],
    of: ({ id }) => ({ table: 'trial', id }),
  },
}
