import type { ImageMarks } from '@/api/shapes'
import type { Spot } from '@/parts/image-board/view'
import { own } from '@/walk/own'

/** A mark, and how many pixels of the screen one of the image was wide when it was set or last moved. */
export interface MarkSpot extends Spot {
  readonly zoom?: number | undefined
}

/** Marks of one canal on one image, the reference point first, the root's end last. */
export interface LineDraft {
  readonly points: readonly MarkSpot[]
  readonly orifice: number | null
  readonly leaves: number | null
  readonly straightAgain: number | null
  /** Tip of an instrument that stands in the canal, and the stop set on it, as it was typed. */
  readonly tip: MarkSpot | null
  readonly setMm: string
}

export type KnownWhat = NonNullable<ImageMarks['known']>['what']

export interface KnownDraft {
  readonly what: KnownWhat
  readonly lengthMm: string
  readonly points: readonly MarkSpot[]
}

/** What is marked: every canal's line, and something of known length. */
export interface Draft {
  readonly lines: Readonly<Record<string, LineDraft>>
  readonly known: KnownDraft
}

export const SCALE = '' // where a canal's name stands for its line, this stands for the known object

export type Role = 'orifice' | 'leaves' | 'straightAgain'
const ROLES: readonly Role[] = ['orifice', 'leaves', 'straightAgain']

export const EMPTY_LINE: LineDraft = {
  points: [],
  orifice: null,
  leaves: null,
  straightAgain: null,
  tip: null,
  setMm: '',
}

export const EMPTY: Draft = { lines: {}, known: { what: 'instrument', lengthMm: '', points: [] } }

export const lineOf = (draft: Draft, canal: string): LineDraft => own(draft.lines, canal) ?? EMPTY_LINE

export const pointsOf = (draft: Draft, of: string): readonly MarkSpot[] =>
  of === SCALE ? draft.known.points : lineOf(draft, of).points

export const hasMarks = ({ lines, known }: Draft): boolean =>
  [known, ...Object.values(lines)].some(({ points }) => points.length > 0)

/** With a further mark after the one that is picked; the roles of later marks move along. */
export function placed(draft: Draft, of: string, after: number | undefined, at: MarkSpot): Draft {
  const points = pointsOf(draft, of)
  const to = after === undefined ? points.length : after + 1
  const more = [...points.slice(0, to), at, ...points.slice(to)]
  if (of === SCALE) return withKnown(draft, { points: more })
  const line = lineOf(draft, of)
  const roles = shifted(line, to, 1)
  // The second mark is the orifice until somebody says otherwise.
  const orifice = roles.orifice ?? (more.length === 2 ? 1 : null)
  return withLine(draft, of, { ...roles, orifice, points: more })
}

export function movedTo(draft: Draft, of: string, number: number, to: MarkSpot): Draft {
  const points = pointsOf(draft, of).map((point, i) => (i === number ? to : point))
  return of === SCALE ? withKnown(draft, { points }) : withLine(draft, of, { points })
}

export function without(draft: Draft, of: string, number: number): Draft {
  const points = pointsOf(draft, of).filter((_, i) => i !== number)
  if (of === SCALE) return withKnown(draft, { points })
  const line = lineOf(draft, of)
  const kept = Object.fromEntries(ROLES.map((role) => [role, line[role] === number ? null : line[role]]))
  return withLine(draft, of, { ...shifted({ ...line, ...kept }, number + 1, -1), points })
}

/** The mark takes the role, or gives it up where it has it; what comes before another stays before it. */
export function withRole(draft: Draft, canal: string, number: number, role: Role): Draft {
  const line = lineOf(draft, canal)
  const roles: Record<Role, number | null> = { ...line, [role]: line[role] === number ? null : number }
  const at = ROLES.indexOf(role)
  for (const [i, other] of ROLES.entries()) {
    const place = roles[other]
    if (other === role || place === null || roles[role] === null) continue
    if (i < at ? place >= number : place <= number) roles[other] = null
  }
  return withLine(draft, canal, roles)
}

export function withLine(draft: Draft, canal: string, change: Partial<LineDraft>): Draft {
  return { ...draft, lines: { ...draft.lines, [canal]: { ...lineOf(draft, canal), ...change } } }
}

export function withKnown(draft: Draft, change: Partial<KnownDraft>): Draft {
  return { ...draft, known: { ...draft.known, ...change } }
}

/** The instrument that stands in the canal as the known object: along the canal's marks to its tip. */
export function asScale(draft: Draft, canal: string): Draft {
  const { points, tip, setMm } = lineOf(draft, canal)
  if (!tip) return draft
  const before = points.filter((mark, i) => {
    // The way the canal runs at this mark; at the last one, the way it came.
    const [from, to] = points[i + 1] ? [mark, points[i + 1]] : [points[i - 1], mark]
    return from && to && (tip.x - mark.x) * (to.x - from.x) + (tip.y - mark.y) * (to.y - from.y) > 0
  })
  return withKnown(draft, { what: 'instrument', lengthMm: setMm, points: [...before, tip] })
}

/** Roles of marks from `from` on move by `by`. */
function shifted(line: LineDraft, from: number, by: number): Pick<LineDraft, Role> {
  const moved = (place: number | null) => (place !== null && place >= from ? place + by : place)
  return { orifice: moved(line.orifice), leaves: moved(line.leaves), straightAgain: moved(line.straightAgain) }
}
