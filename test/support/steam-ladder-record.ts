import type { JudgedTrial } from '#api/judging/judged-trial.ts'
import { judgedTrial } from '#api/judging/judged-trial.ts'
import type { TwinRecord } from '#db/trial-record.ts'
import { recordOf } from './a-record.ts'
import { darkTwins, steamLadder } from './steam-ladder.ts'

/** A difference of the dark twin that was entered without its readings, in a sitting of its own. */
export function enteredTwin(dE00: number, place: number, skeinId = '#twin'): TwinRecord {
  return { skeinId, code: 'twin', dE00, shift: null, wear: {}, sittingId: `#day ${place}`, at: null }
}

/** The steam-time ladder as a trial: one skein in its own packet and wash jar, and a dark twin read again on four days. */
export function steamLadderTrial({
  twins = darkTwins,
  runs = ['run 1', 'run 2', 'run 3', 'run 4'],
}: {
  twins?: readonly number[]
  runs?: readonly string[]
} = {}): JudgedTrial {
  const rows = steamLadder().filter((row) => runs.includes(row.session))
  const record = recordOf({
    pattern: 'P1',
    factors: [
      { key: 'steamTime', stage: 'set', levels: [0, 10, 20, 35, 50, 75], reference: 75, unit: 'min' },
    ],
    sessions: runs,
    vessels: rows.flatMap(({ skein, session }) => [
      { label: `packet ${skein}`, stage: 'set' as const, kind: 'packet' as const, session },
      { label: `jar ${skein}`, stage: 'wash' as const, kind: 'jar' as const, session },
    ]),
    skeins: [
      ...rows.map(({ skein, level, value = 0 }) => ({
        code: skein,
        in: [`packet ${skein}`, `jar ${skein}`],
        level: { steamTime: level },
        results: [{ kind: 'dE00', value, wear: { W2: 3 }, basis: 'own' }],
      })),
      { code: 'twin', role: 'dark twin' as const },
    ],
  })
  return judgedTrial({ ...record, twins: twins.map((dE00, place) => enteredTwin(dE00, place)) })
}
