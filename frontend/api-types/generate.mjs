// Makes src/api/generated.ts from the checked-in description of the API; with --check only says whether it is up to date.
// It has a folder of its own because openapi-typescript needs TypeScript 5 and the app is built with a later one.
import { readFile, writeFile } from 'node:fs/promises'
import openapiTS, { astToString } from 'openapi-typescript'

const description = new URL('../../tests/architecture/openapi.yaml', import.meta.url)
const target = new URL('../src/api/generated.ts', import.meta.url)
const banner = '// Made from the OpenAPI description by `npm run api-types`. Not edited by hand.\n\n'

const text = banner + astToString(await openapiTS(description, { alphabetize: true, defaultNonNullable: false }))
if (process.argv.includes('--check')) {
  const kept = await readFile(target, 'utf8').catch(() => '')
  if (kept !== text) {
    console.error('src/api/generated.ts is out of date: run `npm run api-types` in frontend/.')
    process.exit(1)
  }
} else {
  await writeFile(target, text)
}
