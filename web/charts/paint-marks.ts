import { hatchLines, type Mark, type Point } from '#api/science/pictures/marks.ts'
import type { Look } from '#web/charts/look.ts'

/** Paints marks on a canvas, as `svgOfMarks` writes them. */
export function paintMarks(canvas: CanvasRenderingContext2D, marks: readonly Mark[], look: Look): void {
  for (const mark of marks) {
    canvas.save()
    paint(canvas, mark, look)
    canvas.restore()
  }
}

function paint(canvas: CanvasRenderingContext2D, mark: Mark, { tones, family }: Look): void {
  switch (mark.kind) {
    case 'line':
      canvas.strokeStyle = tones[mark.tone]
      canvas.lineWidth = mark.width
      canvas.globalAlpha = mark.opacity ?? 1
      canvas.lineCap = mark.round === true ? 'round' : 'butt'
      canvas.setLineDash([...(mark.dash ?? [])])
      trace(canvas, mark.points)
      canvas.stroke()
      return
    case 'dot':
      canvas.beginPath()
      canvas.arc(mark.x, mark.y, mark.r, 0, 2 * Math.PI)
      canvas.fillStyle = tones[mark.tone]
      canvas.globalAlpha = mark.fill === 'light' ? 0.22 : 1
      if (mark.fill !== 'none') canvas.fill()
      canvas.globalAlpha = 1
      canvas.strokeStyle = tones[mark.tone]
      canvas.lineWidth = mark.edge
      canvas.setLineDash([...(mark.dash ?? [])])
      if (mark.edge > 0) canvas.stroke()
      return
    case 'text':
      canvas.font = `${mark.strong === true ? 700 : 500} ${mark.size}px ${family}`
      canvas.textAlign = mark.anchor === 'middle' ? 'center' : (mark.anchor ?? 'start')
      canvas.textBaseline = 'alphabetic'
      if (mark.halo !== undefined) {
        canvas.strokeStyle = tones[mark.halo]
        canvas.lineWidth = 4
        canvas.lineJoin = 'round'
        canvas.strokeText(mark.words, mark.x, mark.y)
      }
      canvas.fillStyle = tones[mark.tone]
      canvas.fillText(mark.words, mark.x, mark.y)
      return
    case 'box':
      canvas.beginPath()
      canvas.roundRect(mark.left, mark.top, mark.width, mark.height, mark.round ?? 0)
      if (mark.fill !== undefined) {
        canvas.fillStyle = mark.fill in tones ? tones[mark.fill as keyof typeof tones] : mark.fill
        canvas.fill()
      }
      if (mark.tone !== undefined) {
        canvas.strokeStyle = tones[mark.tone]
        canvas.lineWidth = mark.edge ?? 1
        canvas.stroke()
      }
      return
    case 'hatch':
      canvas.fillStyle = tones.line
      canvas.globalAlpha = 0.14
      canvas.fillRect(mark.left, mark.top, mark.width, mark.height)
      canvas.globalAlpha = 0.5
      canvas.strokeStyle = tones.line
      canvas.lineWidth = 1
      for (const stroke of hatchLines(mark)) {
        trace(canvas, stroke)
        canvas.stroke()
      }
      return
    case 'shape': {
      const { from, to } = mark.fill
      const gradient = canvas.createLinearGradient(from.x, from.y, to.x, to.y)
      gradient.addColorStop(0, from.colour)
      gradient.addColorStop(1, to.colour)
      canvas.fillStyle = gradient
      canvas.strokeStyle = tones[mark.tone]
      canvas.lineWidth = mark.edge
      trace(canvas, mark.points)
      canvas.closePath()
      canvas.fill()
      canvas.stroke()
      return
    }
  }
}

function trace(canvas: CanvasRenderingContext2D, points: readonly Point[]): void {
  canvas.beginPath()
  points.forEach(({ x, y }, place) => {
    if (place === 0) canvas.moveTo(x, y)
    else canvas.lineTo(x, y)
  })
}
