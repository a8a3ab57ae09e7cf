import type { Wear } from '#api/contract/wear.ts'
import type { SkeinRecord } from '#db/trial-record.ts'
import type { FactorWithLevels } from '#db/trials.ts'

/**
 * What a claim from this trial leaves untested, in words: the tests that no skein went through, and everything that was
 * held at one value.
 */
export function notTested({
  wears,
  skeins,
  factors,
  held,
}: {
  readonly wears: readonly Wear[]
  readonly skeins: readonly SkeinRecord[]
  readonly factors: readonly FactorWithLevels[]
  readonly held: readonly { readonly key: string }[]
}): string[] {
  const axes = new Set(wears.flatMap((wear) => Object.keys(wear)))
  const has = (...names: string[]) => names.some((name) => axes.has(name))
  const tests = [
    ...(has('X1 days', 'X2 days') ? [] : ['light']),
    ...(has('rub dry', 'rub wet') ? [] : ['rubbing']),
    ...(has('W5') ? [] : ['wet contact']),
    ...(has('W1', 'W2', 'W3') ? [] : ['washing by hand']),
    ...(has('W4') ? [] : ['machine wash']),
    ...(has('W6') ? [] : ['hot water']),
  ]
  const varied = new Set(factors.map((factor) => factor.key))
  const bases = new Set(skeins.flatMap((skein) => (skein.baseId === null ? [] : [skein.baseId])))
  const others = [
    ...(varied.has('base') || bases.size > 1 ? [] : ['other bases']),
    ...(varied.has('depth') ? [] : ['other depths']),
    ...(varied.has('colourway') || varied.has('dye') ? [] : ['other dyes']),
    ...(held.some((it) => /packet|mass/i.test(it.key)) ? ['bigger packets'] : []),
    ...(factors.some((factor) => factor.kind === 'number') ? ['anything between the levels tried'] : []),
  ]
  return [...tests, ...others]
}
