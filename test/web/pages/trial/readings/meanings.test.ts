import { expect, test } from 'vitest'
import { guessColumns } from '#api/table/guess-columns.ts'
import { storyMaps } from '#db/sample-trials/story-maps.ts'
import { storyText } from '#test/support/a-ladder.ts'
import { meaningGroups, meaningKey, meaningWords } from '#web/pages/trial/readings/meanings.ts'

test('the columns of the steam ladder are called as a dyer would call them', () => {
  const [head = ''] = storyText('steam-time-ladder.csv').split('\n')
  const words = guessColumns(head.trim().split(',')).map((column) => meaningWords(column, []))
  expect(words).toEqual([
    ...['session', 'place', 'steam, min', 'L* before', 'a* before', 'b* before'],
    ...['L* after', 'a* after', 'b* after', 'rinses to 4', 'staining of wool', 'felting'],
  ])
})

test('every meaning of the list has words, and none is there twice', () => {
  const meanings = meaningGroups('mood', []).flatMap((group) => group.meanings)
  const words = meanings.map((meaning) => meaningWords(meaning, []))
  expect(words.filter((word) => word.trim() === '')).toEqual([])
  expect(new Set(meanings.map(meaningKey)).size).toBe(meanings.length)
})

test.each(Object.values(storyMaps).map(({ file }) => file))('every column of %s has words', (file) => {
  const [head = ''] = storyText(file).split('\n')
  const words = guessColumns(head.trim().split(',')).map((column) => meaningWords(column, []))
  expect(words.filter((word) => word.trim() === '' || word.includes('undefined'))).toEqual([])
})
