import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import { cielabDifference } from '#api/science/colour/cielab-difference.ts'
import type { Lab } from '#api/science/colour/lab.ts'
import { meanLab } from '#api/science/colour/mean-colour.ts'
import { changeGrade } from '#api/science/fastness/change-grade.ts'
import { stainingGrade } from '#api/science/fastness/staining-grade.ts'
import type { ReadingKept, SkeinSeen } from '#db/histories.ts'
import type { Basis } from '#db/tables.ts'
import { settingsOf, whyNotComparable } from './settings.ts'

/** What one family of skeins offers for comparison. */
export type Kin = {
  readonly skeins: ReadonlyMap<string, SkeinSeen>
  readonly readings: ReadonlyMap<string, readonly ReadingKept[]>
  /** Parts under foil. */
  readonly covered: ReadonlySet<string>
  /** The untouched readings of the trial's standards. */
  readonly standards: readonly ReadingKept[]
}

/** A reading, and what it is compared with. */
export type Compared = {
  readonly reading: ReadingKept
  readonly against: readonly ReadingKept[]
  readonly basis: Basis
}
/** A comparison that one would expect and that was not made. */
export type NotCompared = { readonly readingId: string; readonly basis: Basis; readonly reason: string }
export type Comparisons = {
  readonly compared: readonly Compared[]
  readonly notCompared: readonly NotCompared[]
}

/** Every comparison of the readings of one skein: with its own beginning, its covered half, its twin, the standard. */
export function comparisonsOf(skein: SkeinSeen, kin: Kin): Comparisons {
  const compared: Compared[] = []
  const notCompared: NotCompared[] = []
  for (const reading of kin.readings.get(skein.id) ?? []) {
    for (const [basis, pool] of poolsOf(reading, skein, kin)) {
      if (pool.length === 0) continue
      const settings = settingsOf(reading)
      const alike = pool.filter((other) => settingsOf(other) === settings)
      const against =
        basis === 'own' || basis === 'companion' ? nearest(alike, reading) : together(alike, reading)
      if (against.length > 0) compared.push({ reading, against, basis })
      else {
        const reason = pool.map((other) => whyNotComparable(reading, other)).find((why) => why !== undefined)
        notCompared.push({
          readingId: reading.id,
          basis,
          reason: reason ?? 'There is nothing to compare it with.',
        })
      }
    }
  }
  return { compared, notCompared }
}

/** The derived numbers of one comparison. Means of L*, a*, b* come first. */
export function changeOf({ reading, against, basis }: Compared) {
  const before = meanLab(against.map(labOf))
  const after = labOf(reading)
  const { dL, da, db, dC, dH, dE76 } = cielabDifference(before, after)
  const grading = basis === 'companion' ? stainingGrade(before, after) : changeGrade(before, after)
  return {
    readingId: reading.id,
    againstIds: against.map((it) => it.id),
    basis,
    dL,
    dA: da,
    dB: db,
    dC,
    dH,
    de76: dE76,
    de00: ciede2000(before, after),
    deF: changeGrade(before, after).difference,
    grade: grading.grade,
  }
}

export function labOf({ meanL, meanA, meanB }: ReadingKept): Lab {
  return { L: meanL, a: meanA, b: meanB }
}

export function isUntouched({ wear }: Pick<ReadingKept, 'wear'>): boolean {
  return Object.keys(wear).length === 0
}

/** When it was read, as far as that was written down. */
export function readAt({ takenAt, at }: ReadingKept): number | undefined {
  return (takenAt ?? at)?.getTime()
}

function* poolsOf(reading: ReadingKept, skein: SkeinSeen, kin: Kin): Generator<[Basis, ReadingKept[]]> {
  const isTwin = skein.role === 'twin' || skein.role === 'dark twin'
  yield [skein.role === 'companion' ? 'companion' : 'own', baselines(reading, skein, kin)]
  if (isUntouched(reading) === false && !isTwin && !kin.covered.has(skein.id)) {
    yield [
      'covered',
      sameSitting(reading, kin, (other) => kin.covered.has(other.id) && isSibling(other, skein)),
    ]
    yield [
      'twin',
      sameSitting(
        reading,
        kin,
        (other) =>
          (other.role === 'twin' || other.role === 'dark twin') &&
          (other.cutFromId === skein.id || isSibling(other, skein)),
      ),
    ]
  }
  if (!notAgainstStandard.has(skein.role)) yield ['standard', [...kin.standards]]
}

const notAgainstStandard = new Set(['standard', 'companion', 'blue wool', 'blank'])

function isSibling(one: SkeinSeen, other: SkeinSeen): boolean {
  return one.id !== other.id && one.cutFromId !== null && one.cutFromId === other.cutFromId
}

function sameSitting(reading: ReadingKept, kin: Kin, isWanted: (skein: SkeinSeen) => boolean): ReadingKept[] {
  const found: ReadingKept[] = []
  for (const skein of kin.skeins.values()) {
    if (!isWanted(skein)) continue
    for (const other of kin.readings.get(skein.id) ?? [])
      if (other.sittingId === reading.sittingId) found.push(other)
  }
  return found
}

/**
 * Untouched readings of the skein that came before; a part without one takes its parent's. What is untouched itself is
 * held against its first sitting, so that readings of an unchanged skein show noise and drift; its first has no change.
 */
function baselines(reading: ReadingKept, skein: SkeinSeen, kin: Kin): ReadingKept[] {
  const untouched = (kin.readings.get(skein.id) ?? []).filter(isUntouched)
  if (isUntouched(reading)) {
    const first = earliest(untouched)
    return !first || first.sittingId === reading.sittingId
      ? []
      : untouched.filter((it) => it.sittingId === first.sittingId)
  }
  const own = untouched.filter((other) => isBefore(other, reading))
  if (own.length > 0) return own
  const seen = new Set([skein.id])
  for (let parent = skein.cutFromId; parent !== null && !seen.has(parent); ) {
    seen.add(parent)
    const theirs = (kin.readings.get(parent) ?? []).filter((it) => isUntouched(it) && isBefore(it, reading))
    if (theirs.length > 0) return theirs
    parent = kin.skeins.get(parent)?.cutFromId ?? null
  }
  return []
}

// Without a date on both, which came first is not known, and the wear alone tells before from after.
function isBefore(other: ReadingKept, reading: ReadingKept): boolean {
  const there = readAt(other)
  const here = readAt(reading)
  return there === undefined || here === undefined || there <= here
}

const orderOf = (it: ReadingKept) => readAt(it) ?? it.createdAt.getTime()

function earliest(readings: readonly ReadingKept[]): ReadingKept | undefined {
  let first: ReadingKept | undefined
  for (const it of readings) if (!first || orderOf(it) < orderOf(first)) first = it
  return first
}

/** The placings of the sitting that is nearest before. */
function nearest(alike: readonly ReadingKept[], reading: ReadingKept): readonly ReadingKept[] {
  const here = orderOf(reading)
  let best: ReadingKept | undefined
  for (const it of alike) {
    if (!best || distance(it, here) < distance(best, here)) best = it
  }
  return best ? alike.filter((it) => it.sittingId === best.sittingId) : []
}

// One that was written down later than the reading stands behind every one that was not.
function distance(it: ReadingKept, here: number): number {
  const gap = here - orderOf(it)
  return gap >= 0 ? gap : 1e15 - gap
}

/** Those of the same sitting where there are any, else all. */
function together(alike: readonly ReadingKept[], reading: ReadingKept): readonly ReadingKept[] {
  const here = alike.filter((it) => it.sittingId === reading.sittingId)
  return here.length > 0 ? here : alike
}
