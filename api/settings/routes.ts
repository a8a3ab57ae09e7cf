import { createRoute } from '@hono/zod-openapi'
import type { Kysely } from 'kysely'
import { Problem } from '#api/contract/problem.ts'
import { listOf } from '#api/contract/quantity.ts'
import type { z } from '#api/contract/schema.ts'
import { Setting, type SettingKey, settingKeys, UnitsSetting, UsualSetting } from '#api/contract/setting.ts'
import { answersProblem } from '#api/http/problem.ts'
import { ifMatch, json, newRoutes, versionSeen } from '#api/http/routes.ts'
import { keepSetting, listSettings } from '#db/settings.ts'
import type { Database } from '#db/tables.ts'

const tags = ['settings']

const listed = createRoute({
  method: 'get',
  path: '/',
  tags,
  summary: 'What the studio has chosen: its units, and what it usually has',
  responses: { 200: json(listOf(Setting), 'Every setting; one that nobody has chosen is at version 0') },
})

/** PUT of one setting: the whole value, over the version that was seen. */
function keeping<Path extends string, Value extends z.ZodType>(path: Path, value: Value, summary: string) {
  return createRoute({
    method: 'put',
    path,
    tags,
    summary,
    request: { headers: ifMatch, body: json(value) },
    responses: {
      200: json(Setting, 'As it is kept'),
      ...answersProblem('malformed-json', 'at-fault', 'changed-meanwhile', 'version-missing'),
    },
  })
}

const keepUnits = keeping('/units', UnitsSetting, 'Choose the measures that stand first')
const keepUsual = keeping('/usual', UsualSetting, 'Say what the calculators begin with')

/** `/api/settings`: a closed list of keys, each with its own shape. */
export function settingRoutes(db: Kysely<Database>) {
  return newRoutes()
    .openapi(listed, async (c) => {
      const kept = await listSettings(db)
      const items = settingKeys.map((key): Setting => {
        const row = kept.find((it) => it.key === key)
        return { key, version: row?.version ?? 0, value: row?.value ?? {} }
      })
      return c.json({ items, next: null }, 200)
    })
    .openapi(keepUnits, async (c) =>
      c.json(await kept(db, 'units', c.req.valid('json'), versionSeen(c.req.valid('header'))), 200),
    )
    .openapi(keepUsual, async (c) =>
      c.json(await kept(db, 'usual', c.req.valid('json'), versionSeen(c.req.valid('header'))), 200),
    )
}

async function kept(db: Kysely<Database>, key: SettingKey, value: object, version: number): Promise<Setting> {
  const row = await keepSetting(db, key, { value, version })
  if (row === undefined)
    throw new Problem('changed-meanwhile', 'This setting was changed meanwhile. Read it again.')
  return { key, version: row.version, value: row.value }
}

export type SettingRoutes = ReturnType<typeof settingRoutes>
