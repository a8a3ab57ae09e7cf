import type { Setting } from '#api/contract/setting.ts'
import { ask } from '#web/api/client.ts'

export const settingsOf = async (signal?: AbortSignal): Promise<readonly Setting[]> =>
  (await ask<{ readonly items: readonly Setting[] }>('/api/settings', signal ? { signal } : {})).items

/** Keeps a setting over the version that was seen; figures go as they were typed. */
export const keepSetting = (
  { key, version }: Pick<Setting, 'key' | 'version'>,
  value: object,
): Promise<Setting> =>
  ask<Setting>(`/api/settings/${key}`, { method: 'PUT', body: value, ifMatch: `"${version}"` })
