/** What one table may hold: far more than a bench brings, and so little that nobody else waits for it. */
export const mostRows = 100_000
export const mostColumns = 100
export const mostCells = 1_500_000
export const longestHeading = 300
export const longestCell = 2000

export const tooManyRows = 'One table may hold 100,000 rows. Send the rest in a second one.'
export const tooManyColumns = 'One table may hold 100 columns.'
export const tooManyCells = 'One table may hold 1,500,000 cells. Send the rest in a second one.'
export const headingTooLong = 'A heading takes at most 300 characters.'
export const cellTooLong = (line: number): string => `Line ${line}: a cell takes at most 2000 characters.`
export const rowTooLong = (line: number): string => `Line ${line} has more than 100 cells.`
