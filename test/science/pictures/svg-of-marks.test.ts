import { expect, test } from 'vitest'
import { hatchLines, type Mark, type Tone } from '#api/science/pictures/marks.ts'
import { svgOfMark, svgOfMarks } from '#api/science/pictures/svg-of-marks.ts'

const names: Tone[] = ['ink', 'soft', 'line', 'hair', 'accent', 'wool', 'grey', 'grey-ink']
const tones = Object.fromEntries(names.map((name) => [name, `var(--${name})`])) as Record<Tone, string>

test('words from outside cannot become markup', () => {
  const mark: Mark = {
    kind: 'text',
    x: 0,
    y: 0,
    words: '<script>alert("1")</script> & co',
    size: 15,
    tone: 'ink',
  }
  const svg = svgOfMark(mark, tones, 'a')
  expect(svg).toContain('&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt; &amp; co')
  expect(svg).not.toContain('<script')
})

test('a picture has the name of what it shows', () => {
  const svg = svgOfMarks([], {
    width: 10,
    height: 20,
    finding: 'Loss is 1.0 from 35 "on"',
    tones,
    family: 'serif',
  })
  expect(svg).toContain('role="img" aria-label="Loss is 1.0 from 35 &quot;on&quot;"')
})

test('two arrows of one picture have gradients of their own', () => {
  const arrow: Mark = {
    kind: 'shape',
    points: [
      { x: 0, y: 0 },
      { x: 9, y: 0 },
      { x: 0, y: 9 },
    ],
    fill: { from: { x: 0, y: 0, colour: '#206070' }, to: { x: 9, y: 0, colour: '#8a8a7a' } },
    tone: 'grey-ink',
    edge: 1,
  }
  const svg = svgOfMarks([arrow, arrow], {
    width: 10,
    height: 10,
    finding: '',
    tones,
    family: 'serif',
    id: 'm',
  })
  expect([...svg.matchAll(/linearGradient id="([^"]+)"/g)].map(([, id]) => id)).toEqual(['m-0', 'm-1'])
})

test('the lines of a hatch stay inside their box', () => {
  for (const [from, to] of hatchLines({ left: 10, top: 20, width: 50, height: 9 })) {
    for (const { x, y } of [from, to]) {
      expect(x).toBeGreaterThanOrEqual(10)
      expect(x).toBeLessThanOrEqual(60)
      expect(y).toBeGreaterThanOrEqual(20)
      expect(y).toBeLessThanOrEqual(29)
    }
    expect(to.x - from.x).toBeCloseTo(from.y - to.y, 9)
  }
})
