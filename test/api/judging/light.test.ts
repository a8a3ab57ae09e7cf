import { expect, test } from 'vitest'
import { judgedTrial } from '#api/judging/judged-trial.ts'
import { judgeLight } from '#api/judging/light.ts'
import { lightGradeText } from '#api/science/fastness/light-rating.ts'
import { storyMaps } from '#db/sample-trials/story-maps.ts'
import { trialRecord } from '#db/trial-record.ts'
import { storyText } from '#test/support/a-ladder.ts'
import { aCondition, askedOf } from '#test/support/asked-of.ts'
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

// What the invented story was made to show at week 10
const ratings = {
  'food-grade pink': '1-2',
  'acid-dye turquoise': '2-3',
  'food-grade blue': '3',
  'food-grade red': '3-4',
  'acid-dye gold': '4-5',
  'acid-dye navy': '5-6',
}

test('the table of a window, kept and read back, gives each colour its blue wool', async () => {
  const db = await emptyDatabase()
  const client = clientOf(db)
  const trial = await client.post('/api/trials', {
    title: 'West window',
    question: 'What does my window do?',
    pattern: 'P5',
    block: 'vessel',
  })
  const at = `/api/trials/${trial.body.id}`
  const { file, ...answers } = storyMaps.windowLight
  expect((await client.post(`${at}/table`, { text: storyText(file), ...answers })).status).toBeLessThan(300)
  const factor = await client.post(`${at}/factors`, {
    key: 'colourway',
    stage: 'dye',
    levels: Object.keys(ratings).map((label) => ({ label })),
  })
  const skeins = (await trialRecord(db, trial.body.id)).skeins
  const levels: { id: string; label: string }[] = factor.body.levels
  const given = levels.map((level) => ({
    factorId: factor.body.id,
    levelId: level.id,
    skeinId: skeins.find((skein) => skein.code === level.label)?.id,
  }))
  expect((await client.post(`${at}/treatments`, { items: given })).status).toBe(201)
  const record = await trialRecord(db, trial.body.id)
  const answersOf = judgeLight(
    askedOf(
      judgedTrial(record),
      aCondition({ question: 'light', outcome: 'dE00', wear: { 'X1 days': 70 }, atLeast: 1 }),
    ),
  )
  const found = answersOf.map(({ levelId, figures, answer, n }) => ({
    colour: levels.find((level) => level.id === levelId)?.label,
    rating: lightGradeText(figures['rating at 70 days'] ?? 0),
    answer,
    n,
  }))
  expect(found).toEqual(
    Object.entries(ratings).map(([colour, rating]) => ({ colour, rating, answer: 'holds', n: 3 })),
  )
})
