import type { Frame } from '#api/science/pictures/frame.ts'
import { straight } from '#api/science/pictures/frame.ts'
import type { LadderLevel, LadderPicture } from '#api/science/pictures/ladder-picture.ts'
import { steamLadder } from './steam-ladder.ts'

/** The steam-time ladder of the sample trials as a picture. The intervals are left out: they come from the verdict. */
export function steamPicture(more: Partial<LadderPicture> = {}): LadderPicture {
  const rows = steamLadder()
  const levels = [0, 10, 20, 35, 50, 75].map((x): LadderLevel => {
    const its = rows.filter(({ level }) => level === x)
    const values = its.map(({ value }) => Number(value))
    return {
      key: String(x),
      label: `${x} min`,
      short: String(x),
      x,
      chosen: x === 35,
      reference: x === 75,
      mean: values.reduce((sum, value) => sum + value, 0) / values.length,
      skeins: its.map(({ skein, session, value }) => ({ code: skein, session, value: Number(value) })),
      lost: [],
    }
  })
  return {
    title: 'Loss by steam time',
    says: 'ΔE00 lost after three warm hand washes.',
    finding: 'From 35 minutes on the loss is 1.0.',
    axis: { label: 'Steam', unit: 'min' },
    outcomeLabel: 'loss',
    fromZero: true,
    numeric: true,
    levels,
    sessions: [1, 2, 3, 4].map((run) => ({ key: `run ${run}`, label: `session ${run}` })),
    margin: { at: 2, label: 'margin: 1.0 above the 75-minute mean', short: 'margin: 1.0 over 75 min' },
    noise: { upTo: 0.3, label: 'noise: dark twin read again, 0.3' },
    brackets: [
      { from: 35, to: 75, label: 'colour holds: 35, 50, 75', short: 'colour holds', kind: 'range' },
      {
        from: 0,
        to: 35,
        label: 'felting 2 or less in every session: 0 to 35',
        short: 'felting 2 or less',
        kind: 'range',
      },
    ],
    window: { from: 35, to: 35, label: 'the window: 35 minutes' },
    ...more,
  }
}

/** A plot in a drawing of this size, its values running from and to these. */
export function plotOf(
  size: { readonly width: number; readonly height: number },
  values: { readonly x: { from: number; to: number }; readonly y: { from: number; to: number } },
): Frame {
  const [left, right, top, bottom] = [36, size.width - 4, 10, size.height]
  return {
    left,
    right,
    top,
    bottom,
    width: size.width,
    x: straight(values.x, { from: left, to: right }),
    y: straight(values.y, { from: bottom, to: top }),
    textScale: 1,
  }
}
