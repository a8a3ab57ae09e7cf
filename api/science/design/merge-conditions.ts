/** Values by key; null says “not recorded here” and wins over what a wider place says. */
export type Layer = { readonly [key: string]: unknown }

/**
 * What was so for one skein: trial, sessions, vessels and the skein itself say it, and the most specific wins. Within
 * a list the later wins: put parents before children.
 *
 * @example
 * mergeConditions({ hold: 30, acid: 60 }, [{ altitude: 200 }], [{ hold: 45 }], [{ acid: null }]) // { hold: 45, acid: null, altitude: 200 }
 */
export function mergeConditions(
  trial: Layer,
  sessions: readonly Layer[],
  vessels: readonly Layer[],
  skein: readonly Layer[],
): Record<string, unknown> {
  const merged: Record<string, unknown> = {}
  for (const layer of [trial, ...sessions, ...vessels, ...skein]) {
    for (const [key, value] of Object.entries(layer)) {
      if (value !== undefined) merged[key] = value
    }
  }
  return merged
}
