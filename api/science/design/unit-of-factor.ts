/** From the coarsest to the finest thing that can be given a level. */
export const unitKinds = ['session', 'vessel', 'parent', 'skein'] as const

export type UnitKind = (typeof unitKinds)[number]

/** Where a skein stood when it was given its level, and what it shared afterwards. Each a name that is its own in the trial. */
export type GivenThing = {
  readonly level: string | number
  readonly session: string
  /** The vessel at the factor's stage. */
  readonly vessel: string
  /** What the skein was cut from; a whole skein is its own parent. */
  readonly parent?: string | undefined
  readonly skein: string
  /** Vessels of later stages up to the outcome, such as its wash jar. */
  readonly later?: readonly string[] | undefined
}

export type UnitOfFactor = {
  /** What was given the levels independently. */
  readonly kind: UnitKind
  /** The unit of each thing, in the order given: things with one name are one unit. */
  readonly unitOf: readonly string[]
  /** Distinct units by the level's text. */
  readonly counts: ReadonlyMap<string, number>
  /** Levels whose units were joined because they shared a later vessel with no other level in it. */
  readonly joined: readonly string[]
}

/**
 * What was given its level independently: the coarsest of session, vessel, parent and skein within which the level
 * never changes. It decides what counts as a replicate, for a plan and for data alike.
 *
 * Units of one level that later shared a vessel with no other level in it, say one wash jar, are one unit: what
 * happened in that jar cannot be told from the level.
 *
 * @example
 * const skein = (level, vessel, skein) => ({ level, session: 'Mon', vessel, skein })
 * unitOfFactor([skein(20, 'packet 1', 'a'), skein(20, 'packet 1', 'b'), skein(75, 'packet 2', 'c')]).kind // 'vessel'
 */
export function unitOfFactor(things: readonly GivenThing[]): UnitOfFactor {
  // Where nothing was cut, parent and skein are the same, and a skein is called a skein.
  const cut = things.some((it) => it.parent !== undefined && it.parent !== it.skein)
  const kinds = unitKinds.filter((it) => cut || it !== 'parent')
  const kind = kinds.find((it) => levelNeverChanges(things, it)) ?? 'skein'
  const names = things.map((it) => `${it.level} in ${nameOf(it, kind)}`)
  const { find, unite } = joining()
  const jars = new Map<string, Set<number>>()
  things.forEach((it, place) => {
    for (const jar of it.later ?? []) jars.set(jar, (jars.get(jar) ?? new Set()).add(place))
  })
  const joined = new Set<string>()
  for (const places of jars.values()) {
    const inside = [...places].map((place) => ({
      level: String(things[place]?.level),
      name: names[place] ?? '',
    }))
    if (new Set(inside.map((it) => it.level)).size > 1) continue
    for (const it of inside) if (unite(inside[0]?.name ?? '', it.name)) joined.add(it.level)
  }
  const unitOf = names.map(find)
  const units = new Map<string, Set<string>>()
  things.forEach((it, place) => {
    const level = String(it.level)
    units.set(level, (units.get(level) ?? new Set()).add(unitOf[place] ?? ''))
  })
  return {
    kind,
    unitOf,
    counts: new Map([...units].map(([level, set]) => [level, set.size])),
    joined: [...joined],
  }
}

function levelNeverChanges(things: readonly GivenThing[], kind: UnitKind): boolean {
  const levels = new Map<string, string>()
  for (const it of things) {
    const name = nameOf(it, kind)
    const before = levels.get(name)
    if (before !== undefined && before !== String(it.level)) return false
    levels.set(name, String(it.level))
  }
  return true
}

function nameOf(it: GivenThing, kind: UnitKind): string {
  if (kind === 'session') return it.session
  if (kind === 'vessel') return JSON.stringify([it.session, it.vessel])
  return kind === 'parent' ? (it.parent ?? it.skein) : it.skein
}

/**
 * Things that turn out to be one, by name: `unite` says whether they were two before, `find` gives the name they share.
 *
 * @example
 * const { find, unite } = joining()
 * const joined = [unite('a', 'b'), unite('b', 'a')]
 * joined.concat(find('b') === find('a')) // [true, false, true]
 */
export function joining(): {
  readonly find: (name: string) => string
  readonly unite: (a: string, b: string) => boolean
} {
  const above = new Map<string, string>()
  const find = (name: string): string => {
    let at = name
    for (let next = above.get(at); next !== undefined; next = above.get(at)) at = next
    return at
  }
  const unite = (a: string, b: string): boolean => {
    const [one, other] = [find(a), find(b)]
    if (one === other) return false
    above.set(other, one)
    return true
  }
  return { find, unite }
}
