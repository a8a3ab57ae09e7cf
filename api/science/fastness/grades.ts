/** The nine half steps of the grey scales, best first. */
export const grades = ['5', '4-5', '4', '3-4', '3', '2-3', '2', '1-2', '1'] as const

/** A grade as it is written: "3-4" stands between 3 and 4. It is a place in an order, not a measure. */
export type Grade = (typeof grades)[number]

/**
 * The number of a grade, for sorting and comparing.
 *
 * @throws RangeError when it is none of the nine
 *
 * @example
 * gradeNumber('3-4') // 3.5
 */
export function gradeNumber(grade: string): number {
  const place = (grades as readonly string[]).indexOf(grade)
  if (place < 0) throw new RangeError(`“${grade}” is not a grade. The grades are ${grades.join(', ')}.`)
  return 5 - place / 2
}

/**
 * How a grade is written.
 *
 * @throws RangeError when the number is not 1, 1.5 … 5
 *
 * @example
 * gradeText(3.5) // '3-4'
 */
export function gradeText(value: number): Grade {
  const grade = grades[(5 - value) * 2]
  if (grade === undefined) throw new RangeError(`A grade is 1, 1.5 … 5; ${value} was given.`)
  return grade
}
