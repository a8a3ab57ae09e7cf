import { useMemo, useRef } from 'preact/hooks'
import { shiftMap } from '#api/science/pictures/shift-map-marks.ts'
import type { ShiftPicture } from '#api/science/pictures/shift-picture.ts'
import { MarksPicture } from '#web/charts/marks-picture.tsx'
import { PictureFigure } from '#web/charts/picture-figure.tsx'
import { useLook } from '#web/charts/use-look.ts'
import { figure, signed } from '#web/form/number-words.ts'
import type { PlainTableData } from '#web/parts/plain-table.tsx'

/** Which way the colour went: `<ShiftMap picture={picture} />`, the picture made once from the finding (`useMemo`). */
export function ShiftMap({ picture }: { readonly picture: ShiftPicture }) {
  const place = useRef<HTMLDivElement>(null)
  const look = useLook(place)
  const drawing = useMemo(() => (look === undefined ? undefined : shiftMap(picture, look)), [picture, look])
  const table = useMemo(() => shiftTable(picture), [picture])
  return (
    <PictureFigure title={picture.title} says={picture.says} table={table}>
      <div ref={place}>
        {drawing === undefined ? null : <MarksPicture finding={picture.finding} {...drawing} />}
      </div>
    </PictureFigure>
  )
}

/** The same as a table: before and after of each level, and what became of each of the three. */
export function shiftTable({ axisLabel, levels }: ShiftPicture): PlainTableData {
  const heads = [
    'L* before',
    'a* before',
    'b* before',
    'L* after',
    'a* after',
    'b* after',
    'ΔL*',
    'Δa*',
    'Δb*',
  ]
  return {
    head: [{ words: axisLabel }, ...heads.map((words) => ({ words, figure: true }))],
    rows: levels.map(({ key, label, chosen, before, after }) => ({
      key,
      chosen,
      cells: [
        label,
        ...[before.L, before.a, before.b, after.L, after.a, after.b].map((value) => figure(value, 1)),
        ...[after.L - before.L, after.a - before.a, after.b - before.b].map((value) => signed(value, 1)),
      ],
    })),
  }
}
