import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  bounds,
  doubtOf,
  isVariable,
  rangeOf,
  refusal,
  refusalOf,
  type VariableKey,
  variableKeys,
} from '#api/contract/bounds.ts'

/**
 * The trade's table of ranges, as it is written there (key | unit | usual | impossible outside): ranges of
 * published methods, dye suppliers' guidance and common practice.
 */
const written = `
fibreMass | g | 5–500 | >0–20000
composition | % | – | 0–100
scourTime | min | 20–30 | 0–180
preSoak | min | 30–720 | 0–10080
depth | % owf | 0.05–4 | 0–15
dyeMass | g | 0.05–20 | 0–500
stockStrength | % w/v | 0.1–2 | >0–20
stockVolume | mL | 2–500 | 0–20000
drops | | 1–60 | 0–1000
acidStrength | % | 5–5 | >0–15
acid | mL per 100 g | 15–100 | 0–1000
citric | % owf | 1–8 | 0–50
pH | | 3.5–5.5 | 0–14
tapAlkalinity | mg/L | 20–300 | 0–1500
bathVolume | L | 0.1–15 | >0–500
liquorRatio | mL/g | 15–40 | 0.5–500
yarnWetness | g/g | 0.6–1.5 | 0–10
startTemp | °C | 15–60 | 0–105
ramp | °C/min | 1–2 | 0–20
peakTemp | °C | 80–96 | 0–125
hold | min | 20–60 | 0–720
steamTime | min | 20–60 | 0–480
heatUp | min | 5–20 | 0–180
lidOpenings | | 0–3 | 0–50
packetMass | g | 10–120 | >0–2000
coolDown | h | 1–12 | 0–72
microwavePower | W | 600–1000 | 100–2000
microwaveBurst | s | 30–120 | 5–900
altitude | m | 0–1500 | -450–5500
rinseCount | | 2–6 | 0–40
rinseVolume | mL/g | 10–30 | >0–500
rinseTemp | °C | 15–40 | 0–95
clarity | | – | 1–5
detergent | g/L | 0.5–5 | 0–50
restDry | h | 12–10000 | 0–10000
washTemp | °C | 20–40 | 5–95
washTime | min | 10–45 | 1–600
washCycles | | 1–5 | 0–200
washLiquor | mL/g | 20–100 | >0–1000
lightDays | d | 14–90 | 0–3650
sunHours | h | – | 0–24
lux | lx | 2000–80000 | 0–150000
dose | Mlx·h | 1–30 | 0–1000
blueWool | | 1–6 | 1–8
rubStrokes | | 10–10 | 1–100
rubLoad | gf | 900–900 | 50–5000
L | | 12–90 | 0–100
a | | -60–90 | -128–127
b | | -60–90 | -128–127
grade | | – | 1–5
readings | | 3–5 | 1–50
photoChannel | | 20–240 | 0–255
greyCardSpread | | – | 0–255
loopLength | cm | 50–180 | 10–500
shortening | % | – | -25–80`
  .trim()
  .split('\n')
  .map((line) => {
    const [key = '', unit = '', usual = '', impossible = ''] = line.split('|').map((cell) => cell.trim())
    return { key, unit, usual, impossible }
  })

test('the variables stand in the order of work, and there are no others', () => {
  expect(variableKeys).toEqual(written.map(({ key }) => key))
  expect(isVariable('steamTime')).toBe(true)
  expect(isVariable('constructor')).toBe(false)
})

test.each(written)('$key is usual at $usual and impossible outside $impossible', (row) => {
  const it = bounds[row.key as VariableKey]
  expect(it.unit).toBe(row.unit)
  expect(it.usual ? it.usual.join('–') : '–').toBe(row.usual)
  const { below, above, belowExclusive } = it.impossible
  expect(`${belowExclusive ? '>' : ''}${below}–${above}`).toBe(row.impossible)
})

// Where the same table asks “Keep it?”: a value that is doubted, and one beside it that is not.
test.each<[VariableKey, number, number]>([
  ['fibreMass', 1.9, 2],
  ['fibreMass', 2001, 2000],
  ['preSoak', 0, 5],
  ['preSoak', 1441, 1440],
  ['depth', 0.004, 0.005],
  ['depth', 8.1, 8],
  ['stockStrength', 5.1, 5],
  ['stockVolume', 1.9, 2],
  ['drops', 101, 100],
  ['acidStrength', 3.9, 4],
  ['acidStrength', 8.1, 8],
  ['acid', 151, 149],
  ['citric', 11, 10],
  ['pH', 2.4, 2.5],
  ['tapAlkalinity', 401, 400],
  ['liquorRatio', 2.9, 3],
  ['yarnWetness', 3.1, 3],
  ['startTemp', 71, 70],
  ['ramp', 4.1, 4],
  ['peakTemp', 69, 70],
  ['peakTemp', 99, 98],
  ['hold', 9, 10],
  ['steamTime', 1, 0],
  ['steamTime', 9, 10],
  ['steamTime', 121, 120],
  ['heatUp', 46, 45],
  ['lidOpenings', 6, 5],
  ['packetMass', 201, 200],
  ['microwaveBurst', 121, 120],
  ['altitude', 2501, 2500],
  ['rinseCount', 11, 10],
  ['rinseVolume', 4.9, 5],
  ['detergent', 11, 10],
  ['restDry', 5, 6],
  ['washTemp', 51, 50],
  ['washTime', 61, 60],
  ['washCycles', 26, 25],
  ['washLiquor', 9, 10],
  ['lightDays', 366, 365],
  ['lux', 120_001, 120_000],
  ['dose', 101, 100],
  ['rubStrokes', 9, 10],
  ['rubLoad', 1501, 1500],
  ['L', 7, 8],
  ['a', 101, 100],
  ['readings', 1, 2],
  ['photoChannel', 5, 6],
  ['photoChannel', 250, 249],
  ['greyCardSpread', 11, 10],
  ['shortening', 6, 5],
])('%s %d is asked about, %d is not', (key, doubted, fine) => {
  expect(doubtOf(key, doubted)).toMatch(/Keep it\?$/)
  expect(doubtOf(key, fine)).toBeUndefined()
})

test('an impossible value is refused with its range, its unit and what was probably meant', () => {
  expect(refusalOf('steamTime', 3500)).toBe('Steam time 3500 min is outside 0–480 min. Did you mean 35?')
  expect(refusal('L', 461)?.suggestion).toBe(46.1)
  expect(refusal('steamTime', -35)?.suggestion).toBe(35)
  expect(refusalOf('altitude', -900)).toBe('Altitude −900 m is outside −450 to 5500 m. Did you mean 900?')
  expect(refusal('lidOpenings', 77)).toEqual({ detail: 'Lid openings 77 is outside 0–50.' })
})

test('a range that begins above zero refuses zero', () => {
  expect(refusalOf('fibreMass', 0)).toBe('Fibre weight 0 g is outside the range more than 0, up to 20000 g.')
  expect(refusalOf('fibreMass', 0.001)).toBeUndefined()
})

test('counts are whole and grades go in halves', () => {
  expect(refusalOf('drops', 2.5)).toBe('Drops 2.5: this is a whole number.')
  expect(refusalOf('clarity', 3.3)).toBe('Rinse clarity 3.3: this goes in halves, such as 3.5.')
  expect(refusalOf('clarity', 3.5)).toBeUndefined()
})

test('a number that is not finite is refused', () => {
  expect(refusalOf('pH', Number.NaN)).toBe('pH with the yarn in is a number.')
  expect(refusalOf('pH', Infinity)).toBe('pH with the yarn in is a number.')
})

test('three times the usual vinegar is a question, not a refusal', () => {
  expect(refusalOf('acid', 150)).toBeUndefined()
  expect(doubtOf('acid', 150)).toBe('Vinegar 150 mL per 100 g is three times the usual. Keep it?')
  expect(doubtOf('peakTemp', 99)).toBe(
    'Peak temperature 99 °C (210 °F) is above the usual 80–96 °C (176–205 °F). Keep it?',
  )
  expect(doubtOf('restDry', 2)).toBe('Rest before reading 2 h is below the usual 12 h or more. Keep it?')
  expect(doubtOf('acid', 1500)).toBeUndefined()
})

test('acid stronger than 15 % is refused with what to do: dilute it up to 25 %, leave it above', () => {
  const cleaning = refusalOf('acidStrength', 25) ?? ''
  expect(cleaning).toContain('Vinegar strength 25 % is outside')
  expect(cleaning).toMatch(/gloves and goggles.*acid into water, never water into acid/i)
  // 25 % to 5 %: five volumes from one, so four of water.
  expect(cleaning).toContain('1 part acid into 4 parts water')
  expect(refusalOf('acidStrength', 20)).toContain('1 part acid into 3 parts water')
  const strong = refusalOf('acidStrength', 80) ?? ''
  expect(strong).toMatch(/do not use it at home/i)
  expect(strong).not.toContain('parts water')
  expect(refusalOf('acidStrength', 15)).toBeUndefined()
})

test('one and a half times the usual is not said as twice', () => {
  expect(doubtOf('steamTime', 240)).toContain('four times the usual')
  expect(doubtOf('microwaveBurst', 180)).toMatch(/^Microwave burst 180 s is 1\.5 times the usual 30–120 s;/)
  expect(doubtOf('packetMass', 230)).toBe('Packet weight 230 g is 1.9 times the usual 10–120 g. Keep it?')
  expect(doubtOf('packetMass', 240)).toBe('Packet weight 240 g is twice the usual 10–120 g. Keep it?')
  expect(doubtOf('washTime', 61)).toBe('Wash time 61 min is above the usual 10–45 min. Keep it?')
  expect(doubtOf('acid', 175)).toBe('Vinegar 175 mL per 100 g is 3.5 times the usual. Keep it?')
})

test('a bath over 100 °C is asked about with what it takes, in °F too', () => {
  expect(doubtOf('peakTemp', 110)).toMatch(
    /110 °C \(230 °F\) is above the usual 80–96 °C \(176–205 °F\); .*a vessel made for pressure/,
  )
})

test('a suggestion is always possible, and usual where something is usual', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...variableKeys),
      fc.double({ noNaN: true, min: -1e6, max: 1e6 }),
      (key, value) => {
        const suggestion = refusal(key, value)?.suggestion
        if (suggestion === undefined) return
        expect(refusal(key, suggestion)).toBeUndefined()
        const [low, high] = bounds[key].usual ?? [-Infinity, Infinity]
        expect(suggestion).toBeGreaterThanOrEqual(low)
        expect(suggestion).toBeLessThanOrEqual(high)
        expect(refusalOf(key, value)).toContain(rangeOf(key))
      },
    ),
  )
})
