import type { StopRow } from '@/api/shapes'

export interface StopGroup {
  readonly phase: string
  readonly rows: readonly StopRow[]
}

/** Rows that follow each other in one phase with the same stops, together: their numbers are written once. */
export function grouped(rows: readonly StopRow[]): StopGroup[] {
  const groups: { phase: string; rows: StopRow[] }[] = []
  for (const row of rows) {
    const last = groups.at(-1)
    const like = last?.rows[0]
    if (last && like && last.phase === row.phase && sameStops(like, row)) last.rows.push(row)
    else groups.push({ phase: row.phase, rows: [row] })
  }
  return groups
}

function sameStops(a: StopRow, b: StopRow): boolean {
  return (
    a.stops.length === b.stops.length &&
    a.stops.every((s) => b.stops.some((t) => t.canal === s.canal && t.stop_mm === s.stop_mm && t.target === s.target))
  )
}
