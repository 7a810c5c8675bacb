import { expect, test } from 'vitest'
import { uuid7 } from '@/store/device/uuid7'
import { vectors } from '../shared/uuid7.json'

test.each(vectors)('the shared vector, $says', ({ unix_ms, bytes_hex, uuid }) => {
  const random = Uint8Array.from(bytes_hex.match(/../g) ?? [], (hex) => Number.parseInt(hex, 16))
  expect(uuid7(Number(unix_ms), random)).toBe(uuid)
})

test('two made at once differ', () => {
  expect(uuid7(5)).not.toBe(uuid7(5))
})
