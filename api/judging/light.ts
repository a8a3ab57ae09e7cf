import { groupBy } from '#api/science/group-by.ts'
import { figure } from '#api/words/numbers.ts'
import type { LevelRow } from '#db/trials.ts'
import type { Answer } from './answer.ts'
import type { Asked, Engine } from './asked.ts'
import { gradeFour } from './light-contrast.ts'
import { lightOfLots } from './light-of-lots.ts'
import { lotsOnCards } from './lots-on-cards.ts'
import { oneLotOnly, openHalves } from './open-halves.ts'
import { figuresOfLight, lostOnCards, ratingsFound, reasonOfLight } from './said-of-light.ts'
import { unchangedUpTo } from './unchanged-up-to.ts'

/** A twin in the dark may change by half of the contrast at which light is read, and no more. */
const darkTwinUpTo = gradeFour / 2

/** Does each colour stand light like the blue wool that is asked for, or better? */
export const judgeLight: Engine = (asked) => asked.levels.map((level) => ofLevel(asked, level))

function ofLevel(asked: Asked, level: LevelRow): Answer {
  const { condition } = asked
  const halves = openHalves(asked, level)
  const found = lightOfLots(lotsOnCards(asked, halves), condition.atLeast)
  const twin = darkTwin(asked, level)
  const moved = twin !== undefined && twin > unchangedUpTo(asked.noise, darkTwinUpTo)
  const answer = moved ? 'not-settled' : found.answer
  const limit = ratingsFound(found, answer)
  return {
    condition,
    levelId: level.id,
    answer,
    reason: moved
      ? `Its twin in the dark changed by ${figure(twin, 1)} as well, so the change is not the light’s alone.`
      : reasonOfLight(asked, found),
    n: found.cards,
    units: { one: 'card', many: 'cards' },
    estimate: null,
    table: null,
    limit,
    placed: found.headline[0]?.ofMeans?.text,
    cautions: found.cards === 0 ? [] : [...oneLotOnly(halves), ...lostOnCards(halves)],
    method: [
      'Each lot is read by the blue wools of its own card at one date: ln ΔE between the two that bracket it, to the nearest half step. A wool that has stopped changing bounds nothing.',
      'The date is the first at which the lot itself has changed by 1.7, grade 4 of the grey scale (ΔE_F where the colour was read, else ΔE*ab, else as entered). Later dates stand beside it, with means over the cards taken first.',
    ],
    figures: figuresOfLight(found, twin),
    more: found.answer === 'not-settled' && found.cards < 3 ? 3 - found.cards : null,
  }
}

/** The most that a twin of this colour changed in the dark, as a mean over each of its dates. */
function darkTwin({ trial, factor }: Asked, level: LevelRow): number | undefined {
  const changes = trial.record.skeins
    .filter((it) => it.role === 'dark twin' && trial.histories.levelOf(it, factor) === level.id)
    .flatMap((skein) => trial.resultsOf(skein.id))
    .filter((it) => it.kind === 'dE00' && (it.basis === 'own' || it.basis === ''))
  const byWear = [...groupBy(changes, (it) => it.wearKey).values()]
  const means = byWear.map((mine) => meanOf(mine.map((it) => it.value)))
  return means.length === 0 ? undefined : Math.max(...means)
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, it) => sum + it, 0) / values.length
}
