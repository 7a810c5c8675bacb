// Makes src/api/generated.ts from the checked-in description of the API.
// It has a folder of its own because openapi-typescript needs TypeScript 5 and the app is built with a later one.
import { createHash } from 'node:crypto'
import { readFile, writeFile } from 'node:fs/promises'
import openapiTS, { astToString } from 'openapi-typescript'

const description = new URL('../../tests/architecture/openapi.yaml', import.meta.url)
const target = new URL('../src/api/generated.ts', import.meta.url)

// A test of the app compares this digest with the description's: it needs neither this folder nor its packages.
const digest = createHash('sha256')
  .update(await readFile(description))
  .digest('hex')
const banner = `// Made from the OpenAPI description by \`npm run api-types\`. Not edited by hand.\n// SHA-256 of the description: ${digest}\n\n`
await writeFile(
  target,
  banner + astToString(await openapiTS(description, { alphabetize: true, defaultNonNullable: false })),
)
