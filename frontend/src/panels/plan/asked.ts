import type { Asked, CanalChoice, CanalPlan, Kit, Plan, Technique, VersionShown } from '@/api/shapes'
import { isWide } from '@/parts/final-size'

/** What a new plan begins with: what the last version asked for, else the first of the programme's kit. */
export function firstAsked(
  last: VersionShown | undefined,
  kits: readonly Kit[],
  techniques: readonly Technique[],
): Asked | undefined {
  if (last) return { kit_id: last.kit_id, technique: last.technique, choices: last.choices }
  const kit = kits[0]
  const needle = kit?.needles.find((n) => n.tip === 'side_vented') ?? kit?.needles[0]
  const technique = techniques[0]
  if (!kit || !needle || !technique) return undefined
  return { kit_id: kit.id, technique: technique.key, choices: { needle, irrigant: 'water', canals: [] } }
}

/** The choices with another one for a canal; none is kept of a canal for which nothing is chosen. */
export function withCanal(asked: Asked, canal: string, change: Partial<CanalChoice>): Asked {
  const canals = asked.choices.canals ?? []
  const old = canals.find((c) => c.canal === canal) ?? { canal }
  const chosen = { ...old, ...change }
  const next = canals.filter((c) => c.canal !== canal)
  if (chosen.final_size != null || chosen.reason) next.push(chosen)
  next.sort((a, b) => a.canal.localeCompare(b.canal))
  return { ...asked, choices: { ...asked.choices, canals: next } }
}

/** Another kit: what it does not have is chosen anew. */
export function withKit(asked: Asked, kit: Kit): Asked {
  const same = kit.needles.find((n) => n.gauge === asked.choices.needle.gauge && n.tip === asked.choices.needle.tip)
  const needle = same ?? kit.needles[0] ?? asked.choices.needle
  const tapers = seriesTapers(kit)
  const { series_taper, ...rest } = asked.choices
  const kept = series_taper != null && tapers.includes(series_taper) ? { series_taper } : {}
  return { ...asked, kit_id: kit.id, choices: { ...rest, ...kept, needle } }
}

/** Final sizes on offer: the sizes of the kit that shape or gauge, smallest first. */
export function sizesOf(kit: Pick<Kit, 'instruments'> | undefined): number[] {
  const sizes = (kit?.instruments ?? []).filter((i) => i.use !== 'coronal').map((i) => i.size)
  return [...new Set(sizes)].sort((a, b) => a - b)
}

export function seriesTapers(kit: Kit | undefined): number[] {
  const tapers = (kit?.instruments ?? []).filter((i) => i.use === 'shaping').map((i) => i.taper)
  return [...new Set(tapers)].sort((a, b) => a - b)
}

/** What was written for a final size outside the advised range. */
export function reasonFor(asked: Pick<Asked, 'choices'> | undefined, canal: string): string {
  return asked?.choices.canals?.find((c) => c.canal === canal)?.reason ?? ''
}

/** The canals whose final size lies outside the advised range and for which nothing is written yet. */
export function withoutReason(asked: Asked, plan: Plan): (CanalPlan & { final_size: number })[] {
  return plan.canals.filter((canal) => isOutside(canal)).filter((c) => reasonFor(asked, c.canal).trim() === '')
}

type Sized = Pick<CanalPlan, 'final_size' | 'size_range'>

/** Whether the final size lies outside the advised range. In a wide canal there is none to lie in. */
export function isOutside<T extends Sized>(canal: T): canal is T & { final_size: number } {
  const { final_size, size_range } = canal
  if (final_size === null || isWide(size_range)) return false
  return final_size < size_range.least || size_range.most < final_size
}
