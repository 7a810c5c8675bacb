// Makes src/api/generated.ts from the checked-in description of the API; with --check only says whether it is up to date.
// It has a folder of its own because openapi-typescript needs TypeScript 5 and the app is built with a later one.
import { readFile, writeFile } from 'node:fs/promises'
import { load } from 'js-yaml'
import openapiTS, { astToString } from 'openapi-typescript'

const description = new URL('../../tests/architecture/openapi.yaml', import.meta.url)
const target = new URL('../src/api/generated.ts', import.meta.url)
const banner = '// Made from the OpenAPI description by `npm run api-types`. Not edited by hand.\n\n'

// A refusal with an example stands beside its operation. Its type has a name all the same, as those have that several
// operations share: its status and its codes (MOST_IN_A_NAME in cases/api/refusals.py).
const MOST_IN_A_NAME = 3
const described = load(await readFile(description, 'utf8'))
for (const { responses } of Object.values(described.paths).flatMap(Object.values)) {
  for (const [status, response] of Object.entries(responses ?? {})) {
    const types = response.content?.['application/problem+json']?.schema.allOf?.[1].properties.type.enum ?? []
    if (types.length === 0 || types.length > MOST_IN_A_NAME) continue
    const name = [status, ...types.map((each) => each.split('/').at(-1))].join('.')
    described.components.responses[name] = response
    responses[status] = { $ref: `#/components/responses/${name}` }
  }
}

const text = banner + astToString(await openapiTS(described, { alphabetize: true, defaultNonNullable: false }))
if (process.argv.includes('--check')) {
  const kept = await readFile(target, 'utf8').catch(() => '')
  if (kept !== text) {
    console.error('src/api/generated.ts is out of date: run `npm run api-types` in frontend/.')
    process.exit(1)
  }
} else {
  await writeFile(target, text)
}
