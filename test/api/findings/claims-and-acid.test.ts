import { expect, test } from 'vitest'
import { storyText } from '#test/support/a-ladder.ts'
import { cellsOf } from '#test/support/a-table.ts'
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

type Limit = { label: string; worstText: string; broken: boolean }
type Step = { label: string; says: string; limits: Limit[] }
type Skein = { code: string; side: Record<string, { value: number }> }

async function studio(place: number) {
  const client = clientOf(await emptyDatabase())
  const { body } = await client.post('/api/example-studio')
  const finding = await client.get(`/api/trials/${body.trialIds[place]}/findings`)
  return finding.body
}

// The grades as they stand in the table, the worst over its fibres: what a reader of it would find by hand.
const rows = cellsOf(storyText('colourway-wash-claims.csv'))
const at = (row: readonly string[], heading: string) => row[rows.headings.indexOf(heading)] ?? ''
const number = (grade: string) => {
  const [low = '', high] = grade.split('-')
  return high === undefined ? Number(low) : Number(low) + 0.5
}
const tests: Readonly<Record<string, readonly string[]>> = {
  'staining after five warm hand washes': ['stain_wool', 'stain_nylon', 'stain_cotton'],
  'staining after one wet contact': ['wet_contact_wool'],
  'staining after one dry rub test (10 strokes)': ['crock_dry'],
  'staining after one wet rub test (10 strokes)': ['crock_wet'],
}
const worstIn = (row: readonly string[], headings: readonly string[] = []) =>
  Math.min(...headings.map((heading) => number(at(row, heading))))

test('each colourway shows the worst of its lots in each test, as its table has it', async () => {
  const finding = await studio(2)
  expect(finding.steps.length).toBe(6)
  for (const step of finding.steps as Step[]) {
    const mine = rows.rows.filter((row) => at(row, 'colourway') === step.label)
    expect(mine.length).toBe(3)
    expect(step.limits.map(({ label }) => label)).toEqual(Object.keys(tests))
    for (const { label, worstText, broken } of step.limits) {
      const worst = Math.min(...mine.map((row) => worstIn(row, tests[label])))
      expect([number(worstText), broken]).toEqual([worst, worst < 4])
    }
  }
})

test('each lot has its own grade of every test, of the parts cut from it too', async () => {
  const finding = await studio(2)
  for (const row of rows.rows) {
    const code = `${at(row, 'colourway')} ${at(row, 'lot')}`
    const skein = (finding.skeins as Skein[]).find((it) => it.code === code)
    const values = Object.values(skein?.side ?? {}).map(({ value }) => value)
    expect(values).toEqual(Object.values(tests).map((headings) => worstIn(row, headings)))
  }
})

test('a colourway says with its answer where its worst grade lies', async () => {
  const finding = await studio(2)
  const said = Object.fromEntries((finding.steps as Step[]).map((step) => [step.label, step.says]))
  expect(said.oat).toBe('passes')
  expect(said.plum).toContain('3-4')
  expect(said['deep turquoise']).toContain('2-3')
  expect(finding.verdict.headline).toMatch(/deep turquoise fails: staining[^;]* 2-3 \(lot/)
  expect(finding.verdict.headline).toMatch(/^Oat, lichen and brick pass: 3 of 3 lots each;/)
})

// No failure of three: 1 − 0.05^(1/3) = 0.632, the exact binomial limit.
test('how little three lots say is said once for all colourways that met their limits', async () => {
  const finding = await studio(2)
  const texts = finding.cautions.map(({ text }: { text: string }) => text)
  const few = texts.filter((text: string) => text.includes('63\u00a0%'))
  expect(few).toEqual(['No failure in 3 lots still leaves up to 63\u00a0% that may fail (95\u00a0%).'])
})

test('a rule by lot says its limit once, with every test that it is asked for after', async () => {
  const finding = await studio(2)
  expect(finding.ruleInWords).toContain(
    'Every lot by its own limits: staining 4 or better after five warm hand washes, after one wet contact, after one dry rub test (10 strokes), after one wet rub test (10 strokes).',
  )
})

test('a rule against the next level says so, and its limits are in per cent', async () => {
  const finding = await studio(1)
  expect(finding.ruleInWords).toContain(
    'L* within 1.0 of the next level (described, not tested). Dye left 6\u00a0% or less.',
  )
  const steps = finding.steps as Step[]
  const answers = Object.fromEntries(steps.map(({ label, says }) => [label, says]))
  expect(answers['30 mL per 100 g']).toBe('enough')
  expect(answers['15 mL per 100 g']).toMatch(/^not enough\. /)
  expect(answers['0 mL per 100 g']).toBe('below the stop: not claimed')
})
