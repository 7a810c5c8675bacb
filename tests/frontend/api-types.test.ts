import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

const read = (path: string) => readFileSync(join(import.meta.dirname, '../..', path))

test('the types are made from the description as it is: else run `npm run api-types` in frontend/', () => {
  const digest = createHash('sha256').update(read('tests/architecture/openapi.yaml')).digest('hex')
  expect(read('frontend/src/api/generated.ts').toString()).toContain(`SHA-256 of the description: ${digest}`)
})
