import { kitchenUnits } from '#api/science/recipe/kitchen-units.ts'
import { inFigures } from '#web/form/measured.ts'
import { Formula, MethodSection } from '#web/pages/method/method-section.tsx'
import { PlainTable } from '#web/parts/plain-table.tsx'

/** Kitchen measures, recipe and pH. */
export function BathAndMeasures() {
  return (
    <>
      <MethodSection id="recipe" title="Dye, stock and bath">
        <Formula>
          dye g = yarn g × depth % ÷ 100; stock mL = yarn g × depth % ÷ stock %; bath mL = yarn g × mL/g
        </Formula>
        <p>
          A weight may be off by half a step of the scale: 0.3 g on a scale of 0.1 g is ±17 %. Water boils at
          about 100 °C (212 °F) less 1 °C for each 300 m (2 °F for each 1000 ft). Rinsing by dilution alone
          leaves (w ÷ (w + V)) for each rinse, w being the wetness and V the fresh water, both for a gram of
          yarn.
        </p>
      </MethodSection>
      <MethodSection id="ph" title="Start pH">
        <p>
          From the balance of charges at 25 °C (77 °F) without salt: alkalinity + [H⁺] − Kw ÷ [H⁺] equals what
          the acids have given up. Constants of NIST SRD 46: acetic 4.757; citric 3.128, 4.761, 6.396;
          carbonic 6.352, 10.329; water 13.997. Alkalinity is mg/L of calcium carbonate ÷ 50,040.
        </p>
        <p>
          There are two values: cold, with the water’s carbonate in the bath, and heated, with its carbon
          dioxide driven off. They differ only where the acid hardly exceeds the water. The fibre is not
          counted: with the yarn in, the pH climbs by 0.5 to 1.5.
        </p>
      </MethodSection>
      <MethodSection id="measures" title="Measures of the kitchen">
        <p>
          An amount is kept as it was entered, and turned once. US measures from the gallon of 231 cubic
          inches (NIST Handbook 44), label measures from 21 CFR 101.9, imperial from the gallon of 4.54609 L,
          ounce and pound of 1959. Old imperial spoons are those of older cookery books, which do not agree.
        </p>
        <PlainTable
          name="Measures of the kitchen"
          data={{
            head: [{ words: 'Measure' }, { words: 'counts as', figure: true }],
            rows: kitchenUnits.map(({ name, kind, size }) => ({
              key: name,
              cells: [name, `${size < 1 ? size : inFigures(size)} ${kind === 'mass' ? 'g' : 'mL'}`],
            })),
          }}
        />
      </MethodSection>
    </>
  )
}
