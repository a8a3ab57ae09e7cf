import { Formula, MethodSection } from '#web/pages/method/method-section.tsx'
import { DeltaE } from '#web/parts/delta-e.tsx'

/** Colour differences, grades and light ratings. */
export function ColourAndGrades() {
  return (
    <>
      <MethodSection id="differences" title="Colour differences">
        <p>
          <DeltaE /> by CIEDE2000 (ISO/CIE 11664-6; rules for hues from Sharma, Wu and Dalal 2005, with their
          34 test pairs). Beside it ΔE*ab (ISO/CIE 11664-4), CIE94 (CIE 116-1995) and CMC(l:c) (ISO 105-J03).
          CIE94 and CMC weigh by the colour before, so before and after do not change places.
        </p>
        <p>
          Words follow the parts: a word for 0.5 or more, “slightly” below 1.5, “much” from 6. That is
          practice, not a standard. Below 0.5 is the noise of handling; a careful eye sees 1 side by side.
        </p>
        <p>
          L*, a* and b* of spectra take weights made from CIE data: the 1931 and 1964 observers (DOI
          10.25039/CIE.DS.xvudnb9b, 10.25039/CIE.DS.sqksu2n5) and the illuminants A, D50 and D65 (DOI
          10.25039/CIE.DS.8jsxjrsn, 10.25039/CIE.DS.etgmuqt5, 10.25039/CIE.DS.hjfjmt59). © International
          Commission on Illumination (CIE), published under{' '}
          <a href="https://creativecommons.org/licenses/by-sa/4.0/">CC BY-SA 4.0</a>; the observers were
          multiplied by the illuminants and gathered on steps of 10 nm by the method of ASTM E2022, and the
          changed table is under the same licence. The CIE has not checked it and does not endorse this.
        </p>
      </MethodSection>
      <MethodSection id="change-grade" title="Grade for change in colour">
        <p>
          Grey-scale rating calculated from CIELAB (A05 formula). Chroma and hue are damped for strong colours
          and turned for blues:
        </p>
        <Formula>
          ΔE<sub>F</sub> = √(ΔL*² + ΔC<sub>F</sub>² + ΔH<sub>F</sub>²)
        </Formula>
        <Formula>
          ΔC<sub>F</sub> = (ΔC* − D) ÷ (1 + (20 C<sub>M</sub> ÷ 1000)²), ΔH<sub>F</sub> = (ΔH* − D) ÷ (1 + (10
          C<sub>M</sub> ÷ 1000)²)
        </Formula>
        <p>
          with D = ΔC* · C<sub>M</sub> · e<sup>−x</sup> ÷ 100, x from the distance of the mean hue to 280°.
          The rating is 5 − ΔE<sub>F</sub> ÷ 1.7 up to 3.4, then 5 − log₂(ΔE<sub>F</sub> ÷ 0.85). The grade
          goes by bands: below 0.40 it is 5, then 4-5 to 1.25, 4 to 2.10, 3-4 to 2.95, 3 to 4.10, 2-3 to 5.80,
          2 to 8.20, 1-2 to 11.60, else 1. The bands are the midpoints of the published visual scale; the
          terms D and x were not compared with a bought copy of the standard.
        </p>
      </MethodSection>
      <MethodSection id="staining-grade" title="Grade for staining">
        <p>
          Grey-scale rating calculated from CIELAB (A04 formula), against the same white cloth unstained and
          washed alike:
        </p>
        <Formula>
          E = ΔE*<sub>ab</sub> − 0.4 √(ΔE*<sub>ab</sub>² − ΔL*²), rating = 6.1 − 1.45 ln E; above 4: 5 − 0.23
          E
        </Formula>
        <p>
          The grade goes by the rating rounded to two decimals: 4.75 or better is 5, from 4.25 it is 4-5, and
          so on. The worst of wool and nylon stands in front: cotton hardly takes acid dye, so a clean cotton
          says little.
        </p>
      </MethodSection>
      <MethodSection id="light" title="Light">
        <p>
          Blue wools lie on the same card, half of everything under foil. At one date the change of the colour
          is placed between those of the wools, on the scale of ln ΔE, to the nearest half: with wool 3 at
          2.57, wool 4 at 1.40 and the colour at 1.87 that is 3 + ln(2.57 ÷ 1.87) ÷ ln(2.57 ÷ 1.40) = 3.5,
          “3-4”. Off the card it is “below 1” or “above 6”. A wool that has stopped changing bounds nothing.
        </p>
        <p>
          An exposure ends when the open half differs from the covered one as the two halves of grade 4 of the
          grey scale for change do, a contrast of 1.7. The headline is taken at that first date; other dates
          stand beside it. The answer is a number on the scale, never days. Cards repeat the exposure and lots
          repeat the dyeing: both are counted.
        </p>
      </MethodSection>
    </>
  )
}
