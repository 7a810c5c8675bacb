import type { CanalPlan } from '@/api/shapes'
import type { Walk } from './walk'

/** Which step of the canal this is, of about how many: what was done, and what the expected way still holds. */
export function placeOf({ expected_path, run_sheet }: CanalPlan, walk: Walk): { step: number; about: number } {
  const done = walk.left.length
  const path = expected_path.filter((id) => run_sheet.nodes[id]?.kind === 'do')
  const rest = path.length - Math.max(0, indexOf(path, walk))
  return { step: done + 1, about: done + rest }
}

/** The step's place on the way: its how manieth visit, or the last where the walk goes round more often. */
function indexOf(path: readonly string[], walk: Walk): number {
  const visits = walk.left.filter(({ node }) => node === walk.at).length + 1
  const places = path.flatMap((id, i) => (id === walk.at ? [i] : []))
  return places[Math.min(visits, places.length) - 1] ?? Math.min(walk.left.length, path.length - 1)
}
