import { converter } from 'culori'
import { pixelsToLab } from '#api/science/colour/pixels-to-lab.ts'
import { evenNumbers } from './sample-colours.ts'
import { printRates, sideBySide } from './side-by-side.ts'

/** 8-bit sRGB pixels to L*a*b* under D65. */
export function benchPixels(): void {
  const things = 200_000
  const next = evenNumbers()
  const pixels = Uint8ClampedArray.from({ length: things * 3 }, () => Math.floor(next() * 256))
  const objects = Array.from({ length: things }, (_, i) => ({
    mode: 'rgb' as const,
    r: pixels[3 * i]! / 255,
    g: pixels[3 * i + 1]! / 255,
    b: pixels[3 * i + 2]! / 255,
  }))
  const toLab = converter('lab65')
  const rates = sideBySide([
    { name: 'pixelsToLab', things, work: () => pixelsToLab(pixels) },
    {
      name: 'culori',
      things,
      work: () => {
        let total = 0
        for (const pixel of objects) total += toLab(pixel).l
        return total
      },
    },
  ])
  printRates('pixels', rates, 6)
}
