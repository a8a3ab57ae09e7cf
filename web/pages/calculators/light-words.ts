import { type LightRating, lightGradeText } from '#api/science/fastness/light-rating.ts'
import { figure } from '#web/form/number-words.ts'

/** The change at which a first fade is seen: grey-scale grade 4. */
export const firstFade = 1.7

/**
 * A light rating as it is said.
 *
 * @example
 * lightInWords({ kind: 'between', rating: 3.52, bracket: [3, 4], left: [] }).figure // '3-4'
 */
export function lightInWords(found: LightRating): { figure: string; words: string } {
  switch (found.kind) {
    case 'between':
      return {
        figure: lightGradeText(found.rating),
        words: `Between wool ${found.bracket[0]} and wool ${found.bracket[1]}: ${figure(found.rating)}, to the nearest half.`,
      }
    case 'below':
      return {
        figure: `Below ${found.number}`,
        words: `It has changed more than wool ${found.number}, the weakest that still bounds it.`,
      }
    case 'above':
      return {
        figure: `Above ${found.number}`,
        words: `It has changed less than wool ${found.number}, the strongest that has changed.`,
      }
    case 'no-wool':
      return { figure: 'Nothing to read', words: 'No blue wool on the card has changed yet.' }
  }
}
