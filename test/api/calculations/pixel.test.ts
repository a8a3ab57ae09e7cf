import { expect, test } from 'vitest'
import reference from '#test/reference/colour/srgb-bradford.json' with { type: 'json' }
import { calculate } from '#test/support/calculate.ts'

// culori and colorjs.io give the same Lab for each pixel within 5e-5 (the file's note).
test.each(['srgb', 'display-p3'])('pixels of the reference file, %s, under both whites', async (space) => {
  const pixels = reference.pixels.filter((pixel) => pixel.space === space)
  for (const white of ['D50', 'D65'] as const) {
    const { status, body } = await calculate('pixel', {
      pixels: pixels.map(({ rgb8 }) => rgb8),
      space,
      white,
    })
    expect(status).toBe(200)
    for (const [i, pixel] of pixels.entries()) {
      const { Lab } = body.results[i]
      for (const [place, axis] of ['L', 'a', 'b'].entries())
        expect(Math.abs(Lab[axis] - pixel[`Lab_${white}`][place]!)).toBeLessThanOrEqual(
          reference.tolerance.Lab,
        )
    }
  }
})

test('a channel of 5 or less or 250 or more is clipped, and counted in a caution', async () => {
  const pixels = [
    [5, 100, 100],
    [6, 249, 100],
    [100, 100, 250],
  ]
  const { body } = await calculate('pixel', { pixels, space: 'srgb', white: 'D65' })
  expect(body.results.map(({ clipped }: { clipped: boolean }) => clipped)).toEqual([true, false, true])
  expect(body.cautions).toEqual([expect.stringContaining('2 of 3')])
})

test.each([
  [{ pixels: [[0, 0, 256]] }, '#/pixels/0/2'],
  [{ pixels: [[0, -1, 0]] }, '#/pixels/0/1'],
  [{ pixels: [[0.5, 0, 0]] }, '#/pixels/0/0'],
  [
    {
      pixels: [
        [0, 0, 0],
        [0, 0],
      ],
    },
    '#/pixels/1',
  ],
  [{ pixels: [[0, 0, 0, 0]] }, '#/pixels/0'],
  [{ pixels: [['0', 0, 0]] }, '#/pixels/0/0'],
  [{ space: 'adobe' }, '#/space'],
  [{ white: 'A' }, '#/white'],
  [{ white: undefined }, '#/white'],
  [{ pixels: new Array(100_001).fill([0, 0, 0]) }, '#/pixels'],
  [{ pixels: new Array(90_000).fill(0) }, '#/pixels/0'],
])('%# is refused', async (wrong, pointer) => {
  const { status, body } = await calculate('pixel', {
    pixels: [[1, 2, 3]],
    space: 'srgb',
    white: 'D65',
    ...wrong,
  })
  expect(status).toBe(422)
  expect(
    body.errors.map((fault: { pointer: string }) => fault.pointer.replace(/(#\/pixels\/1)\/2$/, '$1')),
  ).toContain(pointer)
})
