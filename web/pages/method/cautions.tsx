import { MethodSection } from '#web/pages/method/method-section.tsx'

/** What to mind at the stove, and what no claim may say. */
export function Cautions() {
  return (
    <MethodSection id="cautions" title="Cautions">
      <ul>
        <li>Dye pots, spoons and microwaves are never for food again, food-grade colour or not.</li>
        <li>
          Powder: particle mask, no draught, damp paper; make the stock once. Gloves, apron, eyes covered.
        </li>
        <li>Steam burns: lid away from you, tongs, cool before you open, never boil dry.</li>
        <li>Household acid only, never with bleach. Air the room when vinegar is hot.</li>
        <li>Children and animals away; learners under someone’s eye.</li>
        <li>
          Use dye up, cool and thin out what is left, follow local rules; care with septic tanks and wells.
        </li>
        <li>
          “Food-grade” is the colour as bought, not the yarn: no claim of edible, non-toxic or safe for
          babies. Permitted colours differ by place.
        </li>
        <li>A home test is not a certificate. A claim covers only what was tested.</li>
        <li>Laws on fibre, origin and care labels differ by country: this is no legal advice.</li>
      </ul>
    </MethodSection>
  )
}
