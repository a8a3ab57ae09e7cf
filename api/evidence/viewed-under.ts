import type { ViewingRecord } from '#db/trial-record.ts'

/**
 * The light and observer that skeins were read under, as recorded with their readings; a usual one is never put in.
 *
 * @example
 * viewedUnder([{ skeinId: '1', illuminant: 'D65', observer: '10' }]) // 'D65, 10°'
 */
export function viewedUnder(viewings: readonly ViewingRecord[]): string {
  const said = viewings.map(({ illuminant, observer }) =>
    [
      illuminant ?? 'illuminant not recorded',
      observer === null ? 'observer not recorded' : degrees(observer),
    ].join(', '),
  )
  const all = [...new Set(said)]
  if (all.length === 0 || all.every((it) => it === 'illuminant not recorded, observer not recorded'))
    return 'illuminant and observer not recorded'
  return all.join('; ')
}

const degrees = (observer: string) => (/^\d+$/.test(observer) ? `${observer}°` : observer)
