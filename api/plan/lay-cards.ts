import { randomUUID } from 'node:crypto'
import { drawPlaces } from '#api/science/design/draw-places.ts'
import type { Stage } from '#db/tables.ts'
import { type BenchToLay, combinationsOf, type LaidBench, letter, sessionLabel } from './lay-bench.ts'
import { combinationKey } from './stood-at.ts'

/** Blue wools that a card holds; slower ones hardly change in a season. */
const blueWools = [1, 2, 3, 4, 5, 6]

/**
 * Lays out cards (or trays) that each hold every level: the level is given to the skein, its place on the card is drawn.
 * A light card has each skein as an open and a foil half of one piece, and the blue wools; a twin of each lies in the dark.
 */
export function layCards(plan: BenchToLay): LaidBench {
  const laid: LaidBench = { session: [], vessel: [], skein: [], placement: [], treatment: [] }
  const light = plan.bench.sessionKind === 'light'
  const stage: Stage = light ? 'light' : 'dry'
  const combinations = combinationsOf(plan.factors)
  const cards = Array.from({ length: plan.vesselsPerLevel }, (_, i) => i + 1)
  const toPlace = combinations.flatMap((levels, i) => {
    const ids = levels.map(({ id }) => id)
    return Array.from({ length: plan.skeinsPerVessel }, (_, beside) => ({
      name: `${i} ${beside}`,
      group: combinationKey(ids),
      levels: ids,
    }))
  })
  const placed = drawPlaces(
    plan.numbers.flatMap((number) =>
      cards.map((card) => ({ session: `${number} ${card}`, vessels: toPlace })),
    ),
    plan.seed,
    plan.before,
  )
  for (const number of plan.numbers) {
    const sessionId = randomUUID()
    laid.session.push({
      id: sessionId,
      trialId: plan.trialId,
      kind: plan.bench.sessionKind,
      label: sessionLabel(plan.bench, number),
    })
    const envelopeId = light ? randomUUID() : undefined
    for (const card of cards) {
      const cardId = randomUUID()
      const label = `${plan.bench.vessel.one} ${number}-${card}`
      laid.vessel.push({
        id: cardId,
        sessionId,
        stage,
        kind: plan.bench.vesselKind,
        label,
        place: String(card),
        drawnOrder: card,
      })
      const drawn = placed.filter((it) => it.session === `${number} ${card}`)
      for (const { vessel: name, place } of drawn.toSorted((a, b) => a.place - b.place)) {
        const levels = combinations[Number(name.split(' ')[0])] ?? []
        const code = `${number}-${card}${letter(place - 1)}`
        const id = randomUUID()
        laid.skein.push({ id, trialId: plan.trialId, code, role: 'treated' })
        for (const [i, level] of levels.entries()) {
          const factor = plan.factors[i]
          if (factor) laid.treatment.push({ factorId: factor.id, levelId: level.id, skeinId: id })
        }
        if (!light) {
          laid.placement.push({ skeinId: id, vesselId: cardId, place: String(place), covered: false })
          continue
        }
        const half = (words: string, role: 'treated' | 'dark twin', vesselId: string, covered: boolean) => {
          const part = randomUUID()
          laid.skein.push({ id: part, trialId: plan.trialId, code: `${code} ${words}`, role, cutFromId: id })
          laid.placement.push({ skeinId: part, vesselId, place: String(place), covered })
        }
        half('open', 'treated', cardId, false)
        half('foil', 'treated', cardId, true)
        if (card === 1 && envelopeId) half('dark', 'dark twin', envelopeId, false)
      }
      if (!light) continue
      for (const blueWoolNumber of blueWools) {
        const id = randomUUID()
        const code = `BW${blueWoolNumber} ${number}-${card}`
        laid.skein.push({ id, trialId: plan.trialId, code, role: 'blue wool', blueWoolNumber })
        laid.placement.push({ skeinId: id, vesselId: cardId, covered: false })
      }
    }
    if (envelopeId)
      laid.vessel.push({ id: envelopeId, sessionId, stage, kind: 'card', label: `envelope ${number}` })
  }
  return laid
}
