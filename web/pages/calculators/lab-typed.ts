import { useState } from 'preact/hooks'
import type { Lab } from '#api/science/colour/lab.ts'
import { measured } from '#web/form/measured.ts'

/** A colour as it is typed. */
export type LabTyped = { readonly L: string; readonly a: string; readonly b: string }

export const axes = ['L', 'a', 'b'] as const

const blank: LabTyped = { L: '', a: '', b: '' }
const typedBefore = new Map<string, LabTyped>()

/** A colour as it is typed, kept under a name while one looks elsewhere. `const [before, typeBefore] = useLab('grade.before')` */
export function useLab(name: string): readonly [LabTyped, (typed: LabTyped) => void] {
  const [typed, setTyped] = useState(typedBefore.get(name) ?? blank)
  const keep = (next: LabTyped): void => {
    typedBefore.set(name, next)
    setTyped(next)
  }
  return [typed, keep]
}

/**
 * The colour that was typed, when all three are there and possible.
 *
 * @example
 * labTyped({ L: '52,1', a: '3.2', b: '−8' }) // { L: 52.1, a: 3.2, b: -8 }
 */
export function labTyped(typed: LabTyped): Lab | undefined {
  const [L, a, b] = axes.map((axis) => measured(typed[axis], '', { keptAs: '', variable: axis }).value)
  return L === undefined || a === undefined || b === undefined ? undefined : { L, a, b }
}
