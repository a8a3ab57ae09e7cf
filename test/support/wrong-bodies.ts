import fc from 'fast-check'

// biome-ignore lint/suspicious/noExplicitAny: a schema is read as it comes
type Schema = any
export type Address = { readonly method: string; readonly path: string; readonly body: Schema | undefined }

/** Every address of an OpenAPI document, with the schema of its JSON body, references put in. */
export function addressesOf(document: Schema): Address[] {
  return Object.entries<Schema>(document.paths).flatMap(([path, methods]) =>
    Object.entries<Schema>(methods).map(([method, operation]) => ({
      method: method.toUpperCase(),
      path,
      body: resolved(operation.requestBody?.content?.['application/json']?.schema, document),
    })),
  )
}

function resolved(schema: Schema, document: Schema, depth = 0): Schema {
  if (!schema || typeof schema !== 'object' || depth > 12) return schema
  if (Array.isArray(schema)) return schema.map((part) => resolved(part, document, depth + 1))
  if (typeof schema.$ref === 'string') {
    const name = schema.$ref.split('/').at(-1)
    const { $ref: _, ...beside } = schema
    return { ...resolved(document.components.schemas[name], document, depth + 1), ...beside }
  }
  return Object.fromEntries(
    Object.entries(schema).map(([key, part]) => [key, resolved(part, document, depth + 1)]),
  )
}

/** Bodies that the schema of an address refuses: of another kind, with a field missing, or with a field of another kind. */
export function wrongBodies(schema: Schema): fc.Arbitrary<unknown> {
  const ways: fc.Arbitrary<unknown>[] = [fc.constantFrom(null, 5, 'text', true, [1], [[]], 'a\u0000b')]
  for (const form of formsOf(schema)) {
    const sample = sampleOf(form)
    for (const key of form.required ?? []) {
      const { [key]: _, ...without } = sample
      ways.push(fc.constant(without))
    }
    for (const [key, field] of Object.entries<Schema>(form.properties ?? {})) {
      ways.push(wrongValue(field).map((value) => ({ ...sample, [key]: value })))
    }
  }
  return fc.oneof(...ways)
}

// A body of several forms (one or many) is wrong when it fits none: each form gives its own wrong ones.
function formsOf(schema: Schema): Schema[] {
  const forms = schema?.anyOf ?? schema?.oneOf
  if (forms) return forms.flatMap(formsOf)
  return schema?.type === 'object' && schema.properties ? [schema] : []
}

function typesOf(schema: Schema): string[] {
  if (!schema) return []
  const parts = schema.anyOf ?? schema.oneOf ?? schema.allOf
  if (parts) return parts.flatMap(typesOf)
  if (schema.enum) return [schema.type ?? typeof schema.enum[0]]
  return [schema.type].flat().filter(Boolean)
}

/** A value that a field cannot take, whatever its text or number would mean. */
function wrongValue(schema: Schema): fc.Arbitrary<unknown> {
  const types = new Set(typesOf(schema))
  if (types.size === 0) return fc.constant('a\u0000b')
  const ways: fc.Arbitrary<unknown>[] = []
  if (!types.has('object')) ways.push(fc.constantFrom({ wrong: true }, {}))
  if (!types.has('array')) ways.push(fc.constantFrom([[]], [{ wrong: 1 }]))
  if (!types.has('string') && (types.has('number') || types.has('integer')))
    ways.push(fc.constantFrom('abc', '1e999', 'NaN', '12,5,3'))
  if (!types.has('string') && !types.has('number') && !types.has('integer'))
    ways.push(fc.constantFrom(12.5, 'abc'))
  if (types.has('string') && !types.has('number') && !types.has('integer') && !types.has('object'))
    ways.push(fc.constantFrom(12.5, true))
  return ways.length > 0 ? fc.oneof(...ways) : fc.constant(undefined)
}

function sampleOf(form: Schema): Record<string, unknown> {
  const sample: Record<string, unknown> = {}
  for (const key of form.required ?? []) sample[key] = sampleValue(form.properties?.[key])
  return sample
}

function sampleValue(schema: Schema): unknown {
  if (!schema) return 'text'
  const first = (schema.anyOf ?? schema.oneOf ?? schema.allOf)?.[0]
  if (first) return sampleValue(first)
  if (schema.enum) return schema.enum[0]
  const [type] = [schema.type].flat()
  if (type === 'string') return schema.format === 'uuid' ? '00000000-0000-4000-8000-000000000000' : 'text'
  if (type === 'number' || type === 'integer') return Math.max(1, schema.minimum ?? 1)
  if (type === 'boolean') return true
  if (type === 'array') return [sampleValue(schema.items)]
  return form(schema)
}

const form = (schema: Schema) => (schema.properties ? sampleOf(schema) : {})
