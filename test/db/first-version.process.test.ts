import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { brotliDecompressSync } from 'node:zlib'
import { expect, onTestFinished, test } from 'vitest'
import type { DeclaredVerdict } from '#api/contract/declared-verdict.ts'
import type { EvidenceSheet } from '#api/contract/evidence.ts'
import type { Finding } from '#api/contract/finding.ts'
import { openDatabase } from '#db/open-database.ts'
import { startServer } from '#test/support/running-server.ts'
import { temporaryFolder } from '#test/support/temporary-folder.ts'

/** A copy of what the first version left behind: `test/fixtures/first-version/README.md`. */
function firstVersionFolder(): string {
  const folder = temporaryFolder()
  const packed = new URL('../fixtures/first-version/records.tar.br', import.meta.url)
  execFileSync('tar', ['-C', folder, '-xf', '-'], { input: brotliDecompressSync(readFileSync(packed)) })
  return folder
}

/** The text of every stored body and its checksum, by id. */
async function bodiesIn(dataDir: string): Promise<ReadonlyMap<string, string>> {
  const { db, close } = await openDatabase({ dataDir })
  const sheets = await db.selectFrom('evidenceSheet').select(['id', 'body', 'sha256']).execute()
  const verdicts = await db.selectFrom('verdict').select(['id', 'body']).execute()
  await close()
  return new Map([...sheets, ...verdicts].map(({ id, ...kept }) => [id, JSON.stringify(kept)]))
}

async function toolOn(dataDir: string) {
  const server = await startServer({ dataDir })
  onTestFinished(async () => {
    await server.kill()
  })
  return {
    stop: server.stop,
    page: async (path: string) => {
      const answer = await fetch(server.url + path)
      return { status: answer.status, text: await answer.text() }
    },
    get: async <T>(path: string): Promise<T> => {
      const answer = await fetch(server.url + path)
      expect([path, answer.status]).toEqual([path, 200])
      return (await answer.json()) as T
    },
  }
}

type Items<T> = { readonly items: readonly T[] }
type Shown = { readonly id: string; readonly title: string }

/** How many readings each trial has, and how many gradings, counts and measurements. */
const kept: Readonly<Record<string, readonly [number, number]>> = {
  'Steam, teal': [48, 76],
  'Vinegar on three bases': [0, 135],
  'Three colourways': [0, 28],
  'Acid in doses, eight benches': [0, 69],
  'Six colourways for the market': [0, 144],
  'Vinegar in hard water, three bases': [0, 135],
  'Steam time, teal on fawn cone': [48, 76],
}

test('a folder of the first version opens: every trial, reading, rule, verdict and sheet, judged again, no body changed', async () => {
  const dataDir = firstVersionFolder()
  const before = await bodiesIn(dataDir)
  expect(before.size).toBe(9)
  const tool = await toolOn(dataDir)
  const trials = (await tool.get<Items<Shown>>('/api/trials?limit=100')).items
  const idOf = new Map(trials.map(({ id, title }) => [title, id]))
  expect([...idOf.keys()].sort()).toEqual(Object.keys(kept).sort())

  for (const { id, title } of trials) {
    const finding = await tool.get<Finding>(`/api/trials/${id}/findings`)
    const [readings, outcomes] = await Promise.all(
      ['readings', 'outcomes'].map((rows) => tool.get<Items<unknown>>(`/api/trials/${id}/${rows}?limit=200`)),
    )
    expect([title, readings?.items.length, outcomes?.items.length]).toEqual([title, ...(kept[title] ?? [])])
    if (finding.rule)
      expect(finding.rule.conditions.every(({ statistic }) => statistic !== undefined)).toBe(true)
  }

  const at = (title: string, part: string) => `/api/trials/${idOf.get(title)}/${part}`
  const verdictOf = async (title: string) =>
    (await tool.get<Items<DeclaredVerdict>>(at(title, 'verdicts'))).items[0]
  const sheetOf = async (title: string) =>
    (await tool.get<Items<EvidenceSheet>>(at(title, 'evidence-sheets'))).items[0]

  // What was right stays right, in the words of today.
  expect(await verdictOf('Steam, teal')).toMatchObject({
    headline: '35 minutes of steam holds.',
    judgedBy: 'first version',
    today: { answer: 'holds', headline: '35 minutes of steam is enough.' },
    superseded: false,
    mark: null,
  })
  // It was of the first base alone and did not say so. Of one base of three, chosen with the answers in sight, the limits are stricter.
  const acid = await verdictOf('Vinegar on three bases')
  expect(acid).toMatchObject({ answer: 'holds', judgedBy: 'first version', superseded: false })
  expect(acid?.stratum).toBe(acid?.withinLevelId)
  expect(acid?.today?.headline).toContain('On superwash wool')
  // A grade of oat was corrected to 2 after the sheet was published.
  const today = 'Lichen and brick pass: 3 of 3 lots each; oat fails: staining 2 (lot A).'
  expect(await sheetOf('Three colourways')).toMatchObject({
    headline: 'Oat, lichen and brick hold.',
    answer: 'holds',
    superseded: true,
    mark: `Superseded: a correction came after it. Today: “${today}”`,
    checksumMatches: true,
  })
  expect((await tool.get<Finding>(at('Three colourways', 'findings'))).verdict?.headline).toBe(today)

  for (const { id, title } of trials) {
    for (const sheet of (await tool.get<Items<EvidenceSheet>>(`/api/trials/${id}/evidence-sheets`)).items) {
      expect([title, sheet.checksumMatches, sheet.judgedBy]).toEqual([title, true, 'first version'])
      const { status, text } = await tool.page(sheet.path)
      expect([title, status]).toEqual([title, 200])
      expect(text).toContain(`<h1>${sheet.headline}</h1>`)
      expect(text.includes('class="standing"')).toBe(sheet.mark !== null)
    }
  }
  expect(await tool.stop()).toMatchObject({ code: 0 })
  expect(await bodiesIn(dataDir)).toEqual(before)
})
