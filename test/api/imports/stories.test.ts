import { expect, test } from 'vitest'
import { type StoryMap, storyMaps } from '#db/sample-trials/story-maps.ts'
import { storyText } from '#test/support/a-ladder.ts'
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

async function kept(story: StoryMap) {
  const db = await emptyDatabase()
  const client = clientOf(db)
  const trial = await client.post('/api/trials', { title: story.file, question: 'What does the table say?' })
  const id: string = trial.body.id
  const { file, ...answers } = story
  const body = { text: storyText(file), ...answers }
  const check = await client.post(`/api/trials/${id}/table?check=true`, body)
  const answer = await client.post(`/api/trials/${id}/table`, body)
  expect(answer.body, JSON.stringify(answer.body)).toMatchObject({ leftOut: [] })
  expect(answer.status).toBe(201)
  return { db, client, id, check: check.body, kept: answer.body }
}

const stories = Object.entries(storyMaps) as [string, StoryMap][]

test.each(stories)('the story %s is kept whole by its map, as its check said', async (_name, story) => {
  const rows = storyText(story.file).trim().split('\n').length - 1
  const { check, kept: answer } = await kept(story)
  expect(check).toMatchObject({ rows, ready: rows, faultsInAll: 0 })
  expect(answer).toMatchObject({ rows, kept: rows, makes: check.makes })
})

test.each(stories)('the story %s comes out as it went in', async (_name, story) => {
  const { client, id } = await kept(story)
  const csv = await client.get(`/api/trials/${id}/table`)
  const plain = (text: string) =>
    text
      .trim()
      .split(/\r?\n/)
      .slice(1)
      .map((line) => line.replaceAll(/\b(\d+)\.0\b/g, '$1'))
      .sort()
  expect(plain(csv.body)).toEqual(plain(storyText(story.file)))
})
