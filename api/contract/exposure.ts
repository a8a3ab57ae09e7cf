import { column } from './columns.ts'
import { id } from './quantity.ts'
import { measuredRecord } from './record-schemas.ts'
import { z } from './schema.ts'

export const protocols = [
  'W1',
  'W2',
  'W3',
  'W4',
  'W5',
  'W6',
  'X0',
  'X1',
  'X2',
  'X3',
  'X4',
  'rub dry',
  'rub wet',
] as const

/** One wash, wet contact, rub or light exposure of a vessel. */
export const exposure = measuredRecord('Exposure', {
  vesselId: column.ours(id, 'plain'),
  protocol: column.choice(protocols),
  cycles: column.maybeNumber({ min: 0, max: 200, whole: true }),
  strokes: column.maybeNumber({ min: 1, max: 10_000, whole: true }),
  startedAt: column.moment(),
  endedAt: column.moment(),
  doseMlxh: column.maybeNumber({ min: 0, max: 1000 }),
  due: { sent: z.array(z.iso.date()).max(200).default([]), shown: z.array(z.string()), kept: 'json' },
  conditions: column.conditions(),
})
export type NewExposure = z.infer<typeof exposure.sent>
