import { wearKey } from '#api/contract/wear.ts'
import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import { cielabDifference } from '#api/science/colour/cielab-difference.ts'
import { meanLab } from '#api/science/colour/mean-colour.ts'
import { gradeNumber } from '#api/science/fastness/grades.ts'
import { stainingGrade } from '#api/science/fastness/staining-grade.ts'
import { groupBy } from '#api/science/group-by.ts'
import type { ReadingKept, SkeinSeen } from '#db/histories.ts'
import { type Compared, isUntouched, labOf } from './changes-of.ts'
import { firstRecorded, type SkeinResult } from './result-row.ts'
import { settingsOf } from './settings.ts'

/**
 * What the readings of one skein come to, one row for each kind, basis and wear: its lightness and unevenness before
 * any wear, and its loss. Several placings and sittings are one colour first (mean L*a*b*), then one difference. Readings that cannot
 * stand together are not averaged: the settings with the most readings count.
 */
export function resultsOfReadings(
  skein: SkeinSeen,
  readings: readonly ReadingKept[],
  compared: readonly Compared[],
): SkeinResult[] {
  const results: SkeinResult[] = []
  const alike = mostAlike(readings.filter(isUntouched), (it) => it)
  if (alike.length > 0) {
    const plain = {
      ...countsOf(alike, alike),
      dL: null,
      dA: null,
      dB: null,
      text: null,
      fibre: '',
      basis: '',
    }
    results.push({ ...plain, kind: 'lightness', value: meanLab(alike.map(labOf)).L })
    for (const kind of ['mcdm', 'spread'] as const) {
      const uneven = alike.filter((it) => it[kind] !== null)
      if (uneven.length === 0) continue
      const sum = uneven.reduce((total, it) => total + (it[kind] ?? 0), 0)
      results.push({ ...plain, ...countsOf(uneven, uneven), kind, value: sum / uneven.length })
    }
  }
  for (const group of groupBy(compared, (it) => `${it.basis} ${wearKey(it.reading.wear)}`).values()) {
    results.push(
      ...resultsOfComparison(
        skein,
        mostAlike(group, (it) => it.reading),
      ),
    )
  }
  return results
}

function resultsOfComparison(skein: SkeinSeen, group: readonly Compared[]): SkeinResult[] {
  const after = group.map((it) => it.reading)
  const before = [...new Map(group.flatMap((it) => it.against.map((other) => [other.id, other]))).values()]
  const basis = group[0]?.basis ?? ''
  const from = meanLab(before.map(labOf))
  const to = meanLab(after.map(labOf))
  const { dL, da: dA, db: dB, dE76 } = cielabDifference(from, to)
  const common = { ...countsOf(after, [...after, ...before]), basis, dL, dA, dB }
  if (basis !== 'companion')
    return [{ ...common, kind: 'dE00', fibre: '', text: null, value: ciede2000(from, to) }]
  const { grade } = stainingGrade(from, to)
  const fibre = skein.fibre ?? ''
  return [
    { ...common, kind: 'staining dE76', fibre, text: null, value: dE76 },
    { ...common, kind: 'staining', fibre, text: grade, value: gradeNumber(grade) },
  ]
}

function countsOf(readings: readonly ReadingKept[], used: readonly ReadingKept[]) {
  const [first] = readings
  return {
    wear: first?.wear ?? {},
    readingsN: readings.length,
    spotsN: readings.reduce((sum, it) => sum + it.spotsN, 0),
    settings: first ? settingsOf(first) : '',
    firstRecordedAt: firstRecorded(used),
  }
}

function mostAlike<Item>(items: readonly Item[], readingOf: (item: Item) => ReadingKept): Item[] {
  let most: Item[] = []
  for (const group of groupBy(items, (item) => settingsOf(readingOf(item))).values())
    if (group.length > most.length) most = group
  return most
}
