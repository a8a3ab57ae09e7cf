/** Protein fibres and nylon take acid dye; plant, regenerated and other synthetic fibres do not. */
const takes =
  /wool|merino|lambs|silk|alpaca|mohair|cashmere|angora|yak|camel|llama|possum|qiviut|vicu|bluefaced|bfl|corriedale|shetland|hair|nylon|polyamide/i
const refuses =
  /cotton|linen|flax|hemp|ramie|jute|nettle|viscose|rayon|modal|lyocell|bamboo|acrylic|polyester|elastane|acetate|metal|lurex|stellina/i

/**
 * The share of a yarn that takes acid dye: wool, silk, alpaca, other hair, nylon. Null when nothing is said of its
 * fibres, or when one of them is not known here.
 *
 * @example
 * dyeablePercent([{ fibre: 'wool', percent: 75 }, { fibre: 'cotton', percent: 25 }]) // 75
 */
export function dyeablePercent(composition: readonly { fibre: string; percent: number }[]): number | null {
  if (composition.length === 0) return null
  let share = 0
  for (const { fibre, percent } of composition) {
    // Cotton wool is cotton: what refuses dye is asked first.
    if (refuses.test(fibre)) continue
    if (!takes.test(fibre)) return null
    share += percent
  }
  return share
}
