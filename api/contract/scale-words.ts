/** A scale by which a skein is judged: what its steps are, how it is looked at, and on what it rests. */
export type ScaleInWords = {
  readonly name: string
  readonly how: string
  readonly steps: readonly (readonly [step: string, words: string])[]
  readonly source: string
}

const practice = 'common practice, put into steps here'

/** Every scale that is asked for, step by step. */
export const scalesInWords: readonly ScaleInWords[] = [
  {
    name: 'Change in colour (grey scale)',
    how: 'Lay the skein beside its unwashed twin, in daylight from the north or under a daylight lamp, and find the pair of greys that differ as much. Halves are written 3-4.',
    steps: [
      ['5', 'no difference'],
      ['4', 'just seen side by side (contrast 1.7)'],
      ['3', 'plain (3.4)'],
      ['2', 'strong (6.8)'],
      ['1', 'another colour (13.6)'],
    ],
    source:
      'in the manner of ISO 105-A02; contrasts in ΔE*ab as published there. Lamp and viewing are those of your room, so this is no test certificate.',
  },
  {
    name: 'Staining (grey scale)',
    how: 'Lay the white cloth that went along beside the same cloth washed without dyed yarn. Wool, nylon and cotton each by itself.',
    steps: [
      ['5', 'as white as before'],
      ['4', 'a trace (contrast 4.3)'],
      ['3', 'plain (8.5)'],
      ['2', 'strong (16.9)'],
      ['1', 'dyed (34.1)'],
    ],
    source: 'in the manner of ISO 105-A03; cloths of your own instead of a certified multifibre strip.',
  },
  {
    name: 'Rinse clarity',
    how: '250 mL of the rinse in clear glass, 7 cm deep, on a white card beside tap water, a pencil line under it.',
    steps: [
      ['5', 'clear: cannot be told from tap water'],
      ['4', 'a trace, seen only beside tap water'],
      ['3', 'a tint at once from above; the pencil line is easily read'],
      ['2', 'coloured from the side; the line is legible'],
      ['1', 'strong; the line is faint or gone'],
    ],
    source: practice,
  },
  {
    name: 'Felting',
    how: 'Part the strands with your fingers; measure the loop before and after for its shortening.',
    steps: [
      ['1', 'none'],
      ['2', 'slight fuzz'],
      ['3', 'clings, parts with fingers'],
      ['4', 'matted in places'],
      ['5', 'felted'],
    ],
    source: practice,
  },
  {
    name: 'Evenness',
    how: 'The whole skein in daylight. Say beside it what was intended: speckles are not a fault of a speckled skein.',
    steps: [
      ['1', 'level'],
      ['2', 'nearly level'],
      ['3', 'semi-solid'],
      ['4', 'blotchy'],
      ['5', 'undyed spots'],
    ],
    source: practice,
  },
  {
    name: 'Handle',
    how: 'Eyes closed, beside the undyed yarn.',
    steps: [
      ['1', 'as new'],
      ['5', 'harsh'],
    ],
    source: practice,
  },
  {
    name: 'Blue wools',
    how: 'Eight blue wools of known fading, each about two to three times as fast to light as the one before; they lie on the same card as the yarn, half covered.',
    steps: [
      ['1', 'fades in days in a window'],
      ['4', 'fades in about a month of sun'],
      ['6', 'hardly changes in a season'],
      ['8', 'hardly changes in years'],
    ],
    source:
      'in the manner of ISO 105-B01 (daylight behind glass); your window has its own sun and weather, so only numbers from cards that hung together compare.',
  },
]

/** What each test is, and how it differs from the standard that it goes after. */
export const protocolsInWords: readonly (readonly [name: string, words: string])[] = [
  ['Cool soak (W1)', '20–25 °C (68–77 °F), 15 minutes, wool wash 1 mL/L. Common practice.'],
  [
    'Warm hand wash (W2), the usual one',
    '40 °C (104 °F), 30 minutes, 50 mL of water for each gram, soap 5 g/L (hard water: neutral detergent 4 g/L), its own jar, a piece of 10 × 4 cm with white cloth, and a jar without dyed yarn each wash day. In the manner of ISO 105-C10 A(1); stirred by hand, not in a machine of known movement.',
  ],
  [
    'Jar tumble (W3)',
    '40 °C (104 °F), 30–45 minutes, 10 balls in the jar. In the manner of ISO 105-C06 without its machine.',
  ],
  [
    'Machine wool wash (W4)',
    '30 °C (86 °F), wool programme, with ballast. Your machine is not a standard one.',
  ],
  [
    'Wet contact (W5)',
    'Wet on white cloth, pressed, 4 hours at 37 °C (99 °F) or overnight in the room. In the manner of ISO 105-E01 (12.5 kPa); the weight on it is yours.',
  ],
  ['Hot stress wash (W6)', '60 °C (140 °F), 30 minutes. It finds weak dye; it is never a care claim.'],
  ['In the dark (X0)', 'A twin in an envelope: what changes there was not the light.'],
  [
    'Window (X1), the usual light',
    'Behind glass, half under foil, blue wools on the card, until the open half shows the contrast of grey-scale grade 4 to the covered one. In the manner of ISO 105-B01; not a lamp of known strength as in ISO 105-B02.',
  ],
  ['Shelf (X2)', 'As it lies in a lit room. Slow; blue wools beside it. Common practice.'],
  ['Outdoors (X3)', 'Rain and sun together: not comparable with the window.'],
  ['Hot car (X4)', 'Heat and light together: no evidence.'],
  [
    'Dry and wet rub',
    'White cotton over a finger of 16 mm, pressed with 9 N (900 g), 10 times there and back on 10 cm; the cotton is graded for staining. In the manner of ISO 105-X12; by hand the pressure varies.',
  ],
]
