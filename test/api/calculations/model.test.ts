import { OpenAPIHono } from '@hono/zod-openapi'
import { expect, test } from 'vitest'
import { model } from '#api/calculations/model.ts'
import { calculationRoutes } from '#api/calculations/routes.ts'
import randomPot from '#test/reference/stats/lmm-random-pot.json' with { type: 'json' }
import twoWay from '#test/reference/stats/twoway-unbalanced-fibre-steam.json' with { type: 'json' }
import { calculate } from '#test/support/calculate.ts'
import { expectClose } from '#test/support/close-to.ts'

const rows = twoWay.data.rows
const asked = { rows, response: 'deltaE', factors: ['fibre', 'steam'] }

async function pointers(body: unknown): Promise<string[]> {
  const answer = await calculate('model', body)
  expect(answer.status).toBe(422)
  return answer.body.errors.map((it: { pointer: string }) => it.pointer)
}

// test/reference/stats/twoway-unbalanced-fibre-steam.json (R 4.2.2, car 3.1.1, emmeans 1.8.4)
test('type II is what comes when nothing else is asked, and type III on request', async () => {
  for (const [type, known] of [
    [undefined, twoWay.expected.typeII],
    ['III', twoWay.expected.typeIII_sumContrasts.slice(1)],
  ] as const) {
    const { status, body } = await calculate('model', { ...asked, interactions: 'all', sumsOfSquares: type })
    expect(status).toBe(200)
    expect(body.method).toBe('ols')
    for (const [i, it] of body.table.entries()) {
      expect(it.term).toBe(known[i]!.term)
      expectClose(it.F, known[i]!.F!, 1e-9)
      expectClose(it.p, known[i]!.p!, 1e-8)
    }
    expect(body).toMatchObject({
      cautions: [],
      emptyCells: [],
      aliased: [],
      confounded: [],
      means: {},
      contrasts: {},
    })
  }
})

test('a mixed model has the fields of one, means and contrasts by name', async () => {
  const { status, body } = await calculate('model', {
    rows: randomPot.data.rows,
    response: 'y',
    factors: ['steam'],
    randomIntercepts: ['pot'],
    meansOf: ['steam'],
    contrasts: 'reference',
    reference: { steam: 30 },
    level: 0.9,
  })
  expect(status).toBe(200)
  expect(Object.keys(body)).toEqual(
    expect.arrayContaining([
      ...[
        'method',
        'fixed',
        'table',
        'components',
        'residual',
        'remlCriterion',
        'singular',
        'means',
        'contrasts',
      ],
    ]),
  )
  expect(body.method).toBe('reml')
  expect(body.fixed.map((it: { term: string }) => it.term)).toEqual(['(Intercept)', 'steam=20', 'steam=30'])
  expect(body.contrasts.steam.map((it: { a: string; b: string }) => [it.a, it.b])).toEqual([
    ['30', '10'],
    ['30', '20'],
  ])
  // Pots stand in one steam time each, so the means are independent.
  expect(body.contrasts.steam[0].adjusted).toBe('dunnett')
  expectClose(body.components[0].variance, randomPot.expected.varPot, 1e-6)
  expectClose(body.residual.sd ** 2, randomPot.expected.varResidual, 1e-6)
})

test('every reply is of the form that is documented', async () => {
  for (const body of [
    { ...asked, interactions: 'all', meansOf: ['fibre', 'fibre:steam'], contrasts: 'pairwise' },
    { ...asked, rows: rows.slice(0, 4) },
    { ...asked, rows: rows.map((row) => ({ ...row, deltaE: 1e308 })) },
    { ...asked, randomIntercepts: ['steam'], meansOf: ['steam'], contrasts: 'reference' },
  ]) {
    const answer = await calculate('model', body)
    expect(answer.status).toBe(200)
    expect(model.reply.safeParse(answer.body).error).toBeUndefined()
  }
})

test('the address can be described', () => {
  const app = new OpenAPIHono()
  app.route('/', calculationRoutes())
  const { paths } = app.getOpenAPI31Document({ openapi: '3.1.0', info: { title: '', version: '' } })
  expect(paths?.['/model']?.post?.requestBody).toBeDefined()
})

test('columns that are not there and cells of the wrong kind are refused with their place', async () => {
  expect(await pointers({ ...asked, response: 'dE' })).toEqual(['#/response'])
  expect(await pointers({ ...asked, factors: ['fibre', 'acid'] })).toEqual(['#/factors/1'])
  expect(await pointers({ ...asked, covariates: ['weight'] })).toEqual(['#/covariates/0'])
  expect(await pointers({ ...asked, randomIntercepts: ['session:pot'] })).toEqual(['#/randomIntercepts/0'])
  expect(await pointers({ ...asked, covariates: ['steam'], factors: ['fibre'] })).toContain('#/rows/0/steam')
  expect(await pointers({ ...asked, rows: [...rows, { fibre: 'wool', deltaE: 1 }] })).toEqual([
    '#/rows/33/steam',
  ])
  expect(await pointers({ ...asked, meansOf: ['acid'] })).toEqual(['#/meansOf/0'])
  expect(await pointers({ ...asked, interactions: [['fibre', 'acid']] })).toEqual(['#/interactions/0/1'])
  expect(await pointers({ ...asked, reference: { fibre: 'silk' } })).toEqual(['#/reference/fibre'])
  const long = JSON.stringify({ ...asked, rows: [{ fibre: 'wool', steam: '10', deltaE: 7 }] }).replace(
    '7',
    '1e999',
  )
  const answer = await calculate('model', long)
  expect(answer.body.errors[0].pointer).toBe('#/rows/0/deltaE')
})

test('unknown choices, limits and missing fields are refused with their place', async () => {
  expect(await pointers({})).toEqual(['#/rows', '#/response'])
  expect(await pointers({ ...asked, rows: [] })).toEqual(['#/rows'])
  expect(await pointers({ ...asked, rows: Array.from({ length: 20_001 }, () => ({ deltaE: 1 })) })).toEqual([
    '#/rows',
  ])
  expect(await pointers({ ...asked, rows: [3] })).toEqual(['#/rows/0'])
  expect(await pointers({ ...asked, factors: ['a', 'b', 'c', 'd', 'e', 'f'] })).toEqual(['#/factors'])
  expect(await pointers({ ...asked, randomIntercepts: ['a', 'b', 'c', 'd'] })).toEqual(['#/randomIntercepts'])
  expect(await pointers({ ...asked, sumsOfSquares: 'I' })).toEqual(['#/sumsOfSquares'])
  expect(await pointers({ ...asked, contrasts: 'tukey' })).toEqual(['#/contrasts'])
  expect(await pointers({ ...asked, interactions: 'some' })).toEqual(['#/interactions'])
  expect(await pointers({ ...asked, level: 1 })).toEqual(['#/level'])
})
