import { expect, test } from 'vitest'
import { exampleTrials } from '#db/sample-trials/example-trials.ts'
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

// What a careful reader of the invented tables must find, by hand: the notes beside them.
const told: Readonly<Record<string, readonly RegExp[]>> = {
  'steam-time-ladder.csv': [/^35 minutes of steam is enough\.$/],
  'acid-by-base.csv': [
    /On superwash wool, 30 mL of vinegar per 100 g is enough\./,
    /On wool\/nylon 80\/20, 30 mL of vinegar per 100 g is enough\./,
    /On silk, not reached: 120 mL/,
  ],
  'class-separation.csv': [/Two doses is better than all at start/, /four doses is better than all at start/],
  'colourway-wash-claims.csv': [
    /^Oat, lichen and brick pass: 3 of 3 lots each;/,
    /plum fails: staining 3-4/,
    /slate fails: staining 3-4/,
    /deep turquoise fails: staining 2-3/,
  ],
  'window-light.csv': [
    /Food-grade pink stands light like blue wool 1-2, less than blue wool 4/,
    /acid-dye turquoise stands light like blue wool 2-3, less than blue wool 4/,
    /food-grade blue stands light like blue wool 3, less than blue wool 4/,
    /food-grade red (stands light like blue wool 3-4|is not settled)/,
    /acid-dye gold stands light like blue wool 4-5[;. (]/,
    /acid-dye navy stands light like blue wool 5-6[;. (]/,
  ],
  'scale-up.csv': [
    /1200 g one pot does not repeat: 3\.6 from the standard/,
    /400 g lot repeats, within 2\.0/,
  ],
  'bleeding-rescue.csv': [
    /Cold vinegar is no better than cold water/,
    /hot detergent is better than cold water/,
    /reheating with acid is better than cold water/,
  ],
  'phone-noise.csv': [/^This way of measuring cannot see a margin of 1\.0/],
}

test('every story ends in the answer that its notes tell, in its finding and on its sheet', async () => {
  const client = clientOf(await emptyDatabase())
  const { body } = await client.post('/api/example-studio')
  expect(exampleTrials.map(({ story }) => story.file).sort()).toEqual(Object.keys(told).sort())
  for (const [place, { story }] of exampleTrials.entries()) {
    const id = body.trialIds[place]
    const { verdict } = (await client.get(`/api/trials/${id}/findings`)).body
    const sheet = await client.get(`/sheets/trials/${id}`)
    expect(sheet.status).toBe(200)
    const printed = String(sheet.body)
      .replaceAll(/<[^>]*>/g, '')
      .replaceAll('&#x27;', '’')
    for (const words of told[story.file] ?? []) expect(verdict.headline).toMatch(words)
    expect(printed).toContain(verdict.headline)
    if (verdict.answer === 'not-settled') expect(verdict.settle).not.toBe('')
  }
})

test('a check of the readings names no other level, and counts days, not sessions of the work', async () => {
  const client = clientOf(await emptyDatabase())
  const { body } = await client.post('/api/example-studio')
  const place = exampleTrials.findIndex(({ story }) => story.file === 'phone-noise.csv')
  const { verdict, cautions } = (await client.get(`/api/trials/${body.trialIds[place]}/findings`)).body
  expect(verdict.lead).not.toContain('Against')
  expect(cautions.map(({ text }: { text: string }) => text).join(' ')).not.toContain('planned sessions')
})

test('lightness beside the next level is said of the next level, and not of the most that was tried', async () => {
  const client = clientOf(await emptyDatabase())
  const { body } = await client.post('/api/example-studio')
  const { verdict } = (await client.get(`/api/trials/${body.trialIds[1]}/findings`)).body
  expect(verdict.lead).not.toContain('Against 120')
  expect(verdict.lead).toContain('Do not go to 15 mL per 100 g: L* is on average')
})
