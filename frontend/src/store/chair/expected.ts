import { useEffect, useMemo } from 'preact/hooks'
import * as calls from '@/api/calls'
import type { Bands, CanalBands, Expectation, ExpectedStep, Judged } from '@/api/shapes'
import { useCached, usePolling } from '@/store/cache/hooks'
import type { Left, Walk } from '@/walk/walk'
import type { Chair } from './chair'

/** What is expected of the rest of the work. The chair never waits for it. */
export interface ExpectedRest {
  readonly canals: readonly CanalBands[]
  /** `server`: they know all that was recorded. `kept`: not brought up to date since `at`. `plan`: never were. */
  readonly from: 'server' | 'kept' | 'plan'
  readonly at?: number
}

/** By the server, asked for after every event; without a connection by what it said last, else by the plan. */
export function useExpectedRest(caseId: string, chair: Chair): ExpectedRest {
  const kept = useCached(`bands of ${caseId}`, () => calls.getBands(caseId))
  const { position } = chair.treatment
  const behind = kept.value?.position !== position
  useEffect(() => {
    if (behind) kept.again()
  }, [position])
  usePolling(behind, kept)
  return useMemo(() => expectedRest(chair, kept.value, kept.at), [chair, kept.value])
}

/** The server's bands if they are of the plan that is worked, else the plan's; depths recorded since lie over them. */
export function expectedRest(chair: Chair, bands: Bands | undefined, at: number | undefined): ExpectedRest {
  const of = bands && bands.plan_hash === chair.version.hash ? bands : undefined
  const fresh = of?.position === chair.treatment.position && chair.waiting.length === 0
  const canals = chair.plan.canals.flatMap(({ canal, expectation }) => {
    const walk = chair.course.canals[canal]?.walk
    const known = of?.canals.find((expected) => expected.canal === canal)
    const basis = known?.expectation ?? expectation
    if (!walk || !basis) return []
    return [fresh && known ? known : laidOver(canal, basis, known?.last ?? null, walk)]
  })
  if (fresh) return { canals, from: 'server' }
  return of && at !== undefined ? { canals, from: 'kept', at } : { canals, from: 'plan' }
}

const NOTHING_EXPECTED = {
  low_mm: null,
  high_mm: null,
  short_below_mm: null,
  deep_above_mm: null,
  reach_share: null,
} satisfies Partial<ExpectedStep>

/** The bands with depths that they do not know yet. Each is only compared with its band; nothing is computed anew. */
function laidOver(canal: string, of: Expectation, known: Judged | null, walk: Walk): CanalBands {
  const made = insertions(walk)
  const madeAt = (step: ExpectedStep) =>
    made.find((insertion) => insertion.node === step.node && insertion.pass_number === step.pass_number)
  let last = known
  const steps = of.steps.map((step) => {
    const depth_um = madeAt(step)?.depth_um
    if (step.felt !== null || depth_um == null) return step
    const depth_mm = depth_um / 1000
    const felt = judged(step, depth_mm)
    if (felt && step.low_mm !== null && step.high_mm !== null) {
      const { node, pass_number, low_mm, high_mm, as_if_straight } = step
      last = { node, pass_number, depth_mm, low_mm, high_mm, felt, as_if_straight }
    }
    return { ...step, ...NOTHING_EXPECTED, depth_mm, felt }
  })
  const done = steps.reduce((count, step, i) => (madeAt(step) ? i + 1 : count), 0)
  return { canal, done, expectation: { ...of, steps }, last }
}

/** What is expected of the step that is due in a canal. */
export function expectedNow(ahead: ExpectedRest, canal: string, walk: Walk | undefined): ExpectedStep | undefined {
  const steps = ahead.canals.find((rest) => rest.canal === canal)?.expectation.steps ?? []
  return steps.find(({ node, felt }) => node === walk?.at && felt === null)
}

export function insertions(walk: Walk): readonly Left[] {
  return walk.left.filter(({ node }) => {
    const step = walk.sheet.nodes[node]
    return step?.kind === 'do' && step.action === 'instrument'
  })
}

type Limits = Pick<ExpectedStep, 'low_mm' | 'high_mm' | 'short_below_mm' | 'deep_above_mm'>

/**
 * How a recorded depth lies against what is expected. By the limits, never by the band: one right depth in five lies
 * outside that. Older plans had the band alone.
 */
export function judged(expected: Limits, depth_mm: number): Judged['felt'] | null {
  const least_mm = expected.short_below_mm ?? expected.low_mm
  const most_mm = expected.deep_above_mm ?? expected.high_mm
  if (least_mm === null || most_mm === null) return null
  if (depth_mm < least_mm) return 'shorter'
  return depth_mm > most_mm ? 'longer' : 'as_expected'
}
