const HEX = Array.from({ length: 256 }, (_, i) => i.toString(16).padStart(2, '0'))

/**
 * A UUIDv7 after RFC 9562, 5.7: 48 bits of milliseconds, then random bits around version and variant.
 * It is a mere name: nothing is ever sorted by it, for a phone's clock may be wrong.
 */
export function uuid7(
  now_ms: number = Date.now(),
  random: Uint8Array = crypto.getRandomValues(new Uint8Array(10)),
): string {
  const bytes = new Uint8Array(16)
  for (let i = 0; i < 6; i += 1) bytes[i] = Math.floor(now_ms / 2 ** (8 * (5 - i))) % 256
  bytes.set(random, 6)
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x70
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80
  const hex = [...bytes].map((byte) => HEX[byte]).join('')
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-')
}
