const QUIET = 4 // modules of margin that ISO/IEC 18004 asks for

/** A QR code from its rows of 0 and 1: always dark on light, or no camera reads it. */
export function SquareCode({ rows, says }: { rows: readonly string[]; says: string }) {
  const size = rows.length + 2 * QUIET
  const dark = rows.flatMap((row, y) =>
    [...row].flatMap((module, x) => (module === '1' ? [`M${x + QUIET} ${y + QUIET}h1v1h-1z`] : [])),
  )
  return (
    <svg class="square-code" viewBox={`0 0 ${size} ${size}`} role="img" aria-label={says} shape-rendering="crispEdges">
      <rect width={size} height={size} fill="#fff" />
      <path d={dark.join('')} fill="#000" />
    </svg>
  )
}
