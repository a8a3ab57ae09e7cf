import { z } from '#api/contract/schema.ts'
import { isClipped, pixelsToLab } from '#api/science/colour/pixels-to-lab.ts'
import { calculation, workings } from './calculation.ts'
import { isObject } from './lab-pairs.ts'
import { refuseLongLists } from './long-lists.ts'

const channel = z.number().int().min(0).max(255)
const pixelValues = z.tuple([channel, channel, channel])
const space = z.enum(['srgb', 'display-p3'])
const white = z.enum(['D50', 'D65'])
const mostPixels = 100_000

const request = z.object({ pixels: z.array(pixelValues).max(mostPixels), space, white })

/** Colours of 8-bit pixels: `POST /api/calculations/pixel`. */
export const pixel = calculation({
  name: 'pixel',
  summary: 'L*a*b* of 8-bit pixels, sRGB or Display P3, under D50 or D65',
  request,
  reply: z.object({
    results: z.array(
      z.object({
        Lab: z.object({ L: z.number(), a: z.number(), b: z.number() }),
        clipped: z.boolean(),
      }),
    ),
    ...workings,
  }),
  quick: (body) => {
    if (!isObject(body)) return undefined
    const chosen = z.object({ space, white }).safeParse(body)
    if (chosen.success && arePixels(body.pixels)) return { pixels: body.pixels, ...chosen.data }
    refuseLongLists([{ path: ['pixels'], list: body.pixels, item: pixelValues, most: mostPixels }])
    return undefined
  },
  compute: ({ pixels, space, white }) => {
    const labs = pixelsToLab(pixels.flat(), { space, white })
    const clipped = pixels.filter(([r, g, b]) => isClipped(r, g, b)).length
    return {
      results: pixels.map(([r, g, b], i) => ({
        Lab: { L: labs[3 * i]!, a: labs[3 * i + 1]!, b: labs[3 * i + 2]! },
        clipped: isClipped(r, g, b),
      })),
      method: `${space === 'srgb' ? 'sRGB' : 'Display P3'} by the curve of IEC 61966-2-1, L*a*b* under ${white === 'D50' ? 'D50 by Bradford' : 'D65'}.`,
      cautions:
        clipped > 0
          ? [`${clipped} of ${pixels.length} pixels are too dark or too bright in a channel to be measured.`]
          : [],
    }
  },
})

function arePixels(pixels: unknown): pixels is [number, number, number][] {
  if (!Array.isArray(pixels) || pixels.length > mostPixels) return false
  return pixels.every((one) => Array.isArray(one) && one.length === 3 && one.every(isChannel))
}

function isChannel(value: unknown): boolean {
  return Number.isInteger(value) && (value as number) >= 0 && (value as number) <= 255
}
