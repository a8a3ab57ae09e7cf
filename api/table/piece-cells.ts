import { bounds, isVariable } from '#api/contract/bounds.ts'
import type { Column } from '#api/contract/table.ts'
import { type Wear, wearKey } from '#api/contract/wear.ts'
import { groupBy } from '#api/science/group-by.ts'
import { convert } from '#api/science/recipe/convert.ts'
import type { Pieces } from '#db/tables-kept.ts'

export type Piece = Pieces['skeins'][number]

/** Looks up what stands in the cell of a piece; everything is put in order once, so that long tables are quick. */
export type PieceCells = {
  readonly cell: (piece: Piece, column: Column, frame: string | null) => string
  /** The frames (sittings) in which a piece was read. */
  readonly frames: (piece: Piece) => readonly string[]
}

export function pieceCells(pieces: Pieces, between: Wear): PieceCells {
  const placements = groupBy(pieces.placements, (it) => it.skeinId)
  const readings = groupBy(pieces.readings, (it) => it.skeinId)
  const outcomes = groupBy(pieces.outcomes, (it) => it.skeinId ?? it.vesselId)
  const treatments = groupBy(pieces.treatments, (it) => it.skeinId ?? it.vesselId ?? it.sessionId)
  const parts = new Map(pieces.skeins.map((skein) => [`${skein.cutFromId}\u0001${skein.code}`, skein]))
  const wholes = new Map(pieces.skeins.map((skein) => [skein.id, skein]))

  const placed = (piece: Piece) => placements.get(piece.id) ?? []
  const home = (piece: Piece) => placed(piece).find((it) => it.sessionKind !== 'wash') ?? placed(piece)[0]
  const wearOf = (column: Column): Wear => column.wear ?? (column.when === 'after' ? between : {})

  const levelOf = (piece: Piece, factor: string): string => {
    const things = [
      piece.id,
      ...placed(piece).map((it) => it.vesselId),
      ...placed(piece).map((it) => it.sessionId),
    ]
    for (const thing of things) {
      const given = treatments.get(thing)?.find((it) => it.factor === factor)
      if (given) return given.value === null ? given.label : String(given.value)
    }
    const whole = piece.cutFromId === null ? undefined : wholes.get(piece.cutFromId)
    return whole ? levelOf(whole, factor) : ''
  }

  const labOf = (piece: Piece, column: Column, frame: string | null): string => {
    const key = wearKey(wearOf(column))
    const mine = (readings.get(piece.id) ?? []).filter(
      (it) => wearKey(it.wear) === key && (frame === null || it.sitting === frame),
    )
    if (mine.length === 0) return ''
    const axis = column.as === 'L' ? 'meanL' : column.as === 'a' ? 'meanA' : 'meanB'
    return String(Number((mine.reduce((sum, it) => sum + it[axis], 0) / mine.length).toPrecision(12)))
  }

  const outcomeOf = (piece: Piece, column: Column): string => {
    const holders =
      column.of === 'vessel'
        ? placed(piece).map((it) => it.vesselId)
        : [
            column.role === 'dark twin'
              ? darkOf(piece)?.id
              : column.of === 'part'
                ? partOf(piece, column)?.id
                : piece.id,
          ]
    const key = wearKey(wearOf(column))
    for (const holder of holders) {
      const found = outcomes
        .get(holder ?? null)
        ?.find(
          (it) =>
            it.kind === (column.kind ?? column.heading) &&
            (it.fibre ?? '') === (column.fibre ?? '') &&
            wearKey(it.wear) === key,
        )
      if (found)
        return column.text === undefined && found.text !== null && /^[1-5](?:-[1-5])?$/.test(found.text)
          ? found.text
          : String(found.value)
    }
    return ''
  }

  const partOf = (piece: Piece, column: Column) =>
    parts.get(
      `${piece.id}\u0001${piece.code} ${column.level ?? (Object.keys(wearOf(column)).sort().join(' ') || 'part')}`,
    )
  const darkOf = (piece: Piece) =>
    parts.get(`${piece.cutFromId}\u0001${piece.code} dark`) ??
    parts.get(`${piece.id}\u0001${piece.code} dark`)

  const cell = (piece: Piece, column: Column, frame: string | null): string => {
    switch (column.as) {
      case 'session':
        return home(piece)?.session ?? ''
      case 'place':
        return home(piece)?.place ?? home(piece)?.vesselPlace ?? ''
      case 'skein':
        return shortCode(piece)
      case 'vessel':
        return home(piece)?.vessel ?? ''
      case 'lot':
        return lotLetter(home(piece)?.vessel ?? '', levelsBeside(piece))
      case 'card':
        return (placed(piece).find((it) => it.stage === 'light')?.vessel ?? '').replace(/^card /, '')
      case 'equipment':
        return home(piece)?.equipment ?? ''
      case 'item':
        return itemOf(piece)
      case 'frame':
        return frame ?? ''
      case 'base':
        return piece.base ?? ''
      case 'mass':
        return piece.massG === null ? '' : inUnit(String(piece.massG), 'fibreMass', column.unit)
      case 'lost because':
        return piece.lostReason ?? ''
      case 'level':
        return inUnit(levelOf(piece, column.factor ?? ''), column.factor ?? '', column.unit)
      case 'condition':
        return inUnit(conditionOf(piece, column.key ?? ''), column.key ?? '', column.unit)
      case 'outcome':
        return outcomeOf(piece, column)
      case 'L':
      case 'a':
      case 'b':
        return labOf(piece, column, frame)
      default:
        return ''
    }
  }
  return { cell, frames: (piece) => [...new Set((readings.get(piece.id) ?? []).map((it) => it.sitting))] }

  /** A code that an import told apart by its batch, as the table wrote it. */
  function shortCode(piece: Piece): string {
    const scopes = [home(piece)?.vessel, home(piece)?.session].map((name) => `${name}-`)
    const scope = scopes.find((it) => piece.code.startsWith(it))
    return scope === undefined ? piece.code : piece.code.slice(scope.length)
  }

  function levelsBeside(piece: Piece): string[] {
    return placed(piece).flatMap((it) => treatments.get(it.vesselId)?.map((given) => given.label) ?? [])
  }

  function itemOf(piece: Piece): string {
    const card = placed(piece)
      .find((it) => it.stage === 'light')
      ?.vessel.replace(/^card /, '')
    return card !== undefined && piece.code.endsWith(` ${card}`)
      ? piece.code.slice(0, -card.length - 1)
      : piece.code
  }
}

/** A number that is kept in the unit of the table of variables, in the unit of its column. */
function inUnit(text: string, key: string, unit: string | undefined): string {
  if (text === '' || unit === undefined || !isVariable(key) || unit === bounds[key].unit) return text
  const number = Number(text)
  const shown = Number.isFinite(number) ? convert(number, bounds[key].unit, unit) : undefined
  return shown === undefined ? text : String(Number(shown.toPrecision(12)))
}

function lotLetter(label: string, beside: readonly string[]): string {
  const before = beside.find((level) => label.startsWith(`${level} `))
  return before === undefined ? label : label.slice(before.length + 1)
}

function conditionOf(piece: Piece, key: string): string {
  const value = piece.conditions[key]
  if (value === null || value === undefined) return ''
  return String(typeof value === 'object' ? value.value : value)
}
