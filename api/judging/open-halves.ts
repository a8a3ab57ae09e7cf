import type { SkeinRecord, VesselSeen } from '#db/trial-record.ts'
import type { LevelRow } from '#db/trials.ts'
import type { Asked } from './asked.ts'
import { lotInWords } from './units-in-words.ts'

/** What lay open to the light of one skein, on its card. Halves under foil are compared with it and never averaged into it. */
export type OpenHalf = {
  readonly skein: SkeinRecord
  readonly card: VesselSeen
  /** Its dye lot: an id, and as it stands in a sentence. */
  readonly lot: string
  readonly lotName: string
  readonly lost: boolean
}

const treated: ReadonlySet<string> = new Set(['treated', 'bled'])

/** The open halves of one level, in its stratum. */
export function openHalves({ trial, factor, stratum }: Asked, level: LevelRow): OpenHalf[] {
  const { record, histories } = trial
  const cards = new Map(record.vessels.filter(({ stage }) => stage === 'light').map((it) => [it.id, it]))
  return record.skeins.flatMap((skein) => {
    if (!treated.has(skein.role) || histories.levelOf(skein, factor) !== level.id) return []
    if (stratum.parts.some((part) => histories.levelOf(skein, part.factor) !== part.level.id)) return []
    const place = record.places.find((it) => it.skeinId === skein.id && cards.has(it.vesselId))
    const card = place && cards.get(place.vesselId)
    if (!card || place.covered) return []
    const bath = histories.stayAt(skein, 'dye')?.vessel
    return [
      {
        skein,
        card,
        lot: bath?.id ?? '',
        lotName: bath ? lotInWords(bath.label, level.label) : 'its lot',
        lost: skein.status === 'lost' || card.status === 'lost',
      },
    ]
  })
}

/** What a reader of few cards or one lot must know. */
export function oneLotOnly(halves: readonly Pick<OpenHalf, 'lot' | 'card'>[]): string[] {
  const lots = new Set(halves.map(({ lot }) => lot))
  const cards = new Set(halves.map(({ card }) => card.id))
  if (lots.size !== 1) return []
  return cards.size > 1
    ? ['This is one dye lot: several cards do not make several lots. Another lot may be different.']
    : ['This is one dye lot. Another lot may be different.']
}
