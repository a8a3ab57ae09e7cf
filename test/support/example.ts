import { lineAt } from './source-files.ts'

/** An `@example` of a doc comment: lines of code, of which the last is `expression // result`. */
export type Example = { readonly line: number; readonly code: string; readonly result: string }

const docComment = /\/\*\*[\s\S]*?\*\//g
const body = /@example\b([^\n]*)\n([\s\S]*?)(?=\n\s*\*\s*@|\n?\s*\*\/)/g

export function examplesIn(text: string): Example[] {
  return [...text.matchAll(docComment)].flatMap((comment) =>
    [...comment[0].matchAll(body)].map((match) => {
      const lines = (match[2] ?? '')
        .split('\n')
        .map((line) => line.replace(/^\s*\* ?/, ''))
        .filter((line) => line.trim() !== '')
      const line = lineAt(text, comment.index + match.index) + 1
      const last = lines.findLastIndex((it) => !/^\s*\/\//.test(it) && it.includes(' // '))
      const [expression = '', ...result] = (lines[last] ?? '').split(' // ')
      const more = (last < 0 ? [] : lines.slice(last + 1)).map((it) => it.replace(/^\s*\/\/ ?/, ''))
      return {
        line,
        code: [...lines.slice(0, Math.max(0, last)), `return (${expression.replace(/;\s*$/, '')})`].join(
          '\n',
        ),
        result: [result.join(' // '), ...more].join('\n').trim(),
      }
    }),
  )
}

/** A number of a result, with the digits that are shown. */
class Shown {
  readonly text: string
  constructor(text: string) {
    this.text = text
  }
}

const AsyncFunction = (async () => {}).constructor as new (
  ...names: string[]
) => (...values: unknown[]) => Promise<unknown>

/** Runs an example with names in scope; says what is wrong with it, or nothing. */
export async function faultOf(
  example: Example,
  scope: Readonly<Record<string, unknown>>,
): Promise<string | undefined> {
  if (example.result === '') return 'has no “expression // result” as its last line'
  const names = Object.keys(scope).filter((name) => /^[A-Za-z_$][\w$]*$/.test(name) && name !== 'default')
  const values = names.map((name) => scope[name])
  const throwing = /^throws (\w+)/.exec(example.result)
  let actual: unknown
  try {
    actual = await new AsyncFunction(...names, example.code)(...values)
  } catch (error) {
    if (throwing && (error as Error).name === throwing[1]) return undefined
    return `does not run: ${(error as Error).message}`
  }
  if (throwing) return `does not throw ${throwing[1]}`
  let shown: unknown
  try {
    shown = await new AsyncFunction('Shown', ...names, `return (${withShownNumbers(example.result)})`)(
      Shown,
      ...values,
    )
  } catch (error) {
    return `has a result that cannot be read: ${(error as Error).message}`
  }
  if (agrees(actual, shown)) return undefined
  return `says ${example.result} and gives ${JSON.stringify(actual)}`
}

const token =
  /'(?:[^'\\]|\\.)*'|"(?:[^"\\]|\\.)*"|`(?:[^`\\]|\\.)*`|[A-Za-z_$][\w$]*|(?<=^|[[(,:{]\s*)-?\d[\d_]*(?:\.\d+)?(?:e[+-]?\d+)?|\d[\d_]*(?:\.\d+)?(?:e[+-]?\d+)?/g

// Every number becomes one that knows its digits; words and names stay as they are.
function withShownNumbers(result: string): string {
  return result
    .replace(token, (it) => (/^-?\d/.test(it) ? `(new Shown('${it.replaceAll('_', '')}'))` : it))
    .replace(/\(new Shown\('([^']*)'\)\)(\s*:)/g, '$1$2')
}

function agrees(actual: unknown, shown: unknown): boolean {
  if (shown instanceof Shown) return typeof actual === 'number' && roundsTo(actual, shown.text)
  if (Array.isArray(shown)) {
    const list = actual instanceof Float64Array ? [...actual] : actual
    return Array.isArray(list) && list.length === shown.length && shown.every((it, i) => agrees(list[i], it))
  }
  if (typeof shown === 'object' && shown !== null) {
    if (typeof actual !== 'object' || actual === null) return false
    const fields = actual as Record<string, unknown>
    return Object.entries(shown).every(([key, value]) => agrees(fields[key], value))
  }
  return Object.is(actual, shown)
}

/**
 * `0.0249` rounds to `0.02`: it is nearer to it than half a unit of the last digit that is shown. Of an example with
 * very many digits twelve are held: the last ones of a published value are its printer's.
 */
function roundsTo(value: number, text: string): boolean {
  const [mantissa = '', exponent = '0'] = text.split('e')
  const decimals = (mantissa.split('.')[1] ?? '').length - Number(exponent)
  const half = 0.5 * 10 ** -decimals
  return Math.abs(value - Number(text)) <= Math.max(half * (1 + 1e-9), Math.abs(value) * 1e-12)
}
