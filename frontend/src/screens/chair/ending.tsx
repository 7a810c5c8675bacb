import type { CanalPlan } from '@/api/shapes'
import { instrumentOf } from '@/panels/emergency/at-hand'
import { sizeOf } from '@/parts/final-size'
import { StepAnswers } from '@/parts/step-answers'
import type { Chair } from '@/store/chair/chair'
import { mm } from '@/units/millimetres'
import { givenIn } from '@/walk/irrigants'
import { words } from '@/words/en'
import './ending.css'

/** Whether every canal has come to its end, or was left out by the supervisor. */
export function isOver({ course }: Chair): boolean {
  const states = Object.values(course.canals).map(({ state }) => state)
  return states.includes('finished') && states.every((state) => state === 'finished' || state === 'not_released')
}

/** Nothing is due any more: canal by canal what was planned, what was done, and what is left. */
export function Ending({ chair, canals }: { chair: Chair; canals: readonly CanalPlan[] }) {
  return (
    <section class="now-card ending" aria-label={words.ending.title}>
      <h2>{words.ending.title}</h2>
      <table>
        <thead>
          <tr>
            {words.ending.heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {canals.map((canal) => (
            <tr key={canal.canal}>
              <th scope="row">{canal.canal}</th>
              <td>
                {canal.end_mm === null ? '–' : mm(canal.end_mm)}
                {canal.final_size !== null && <span class="block small">{sizeOf(canal)}</span>}
              </td>
              <td>
                {doneIn(chair, canal)}
                <span class="block small">{rinsedIn(chair, canal.canal)}</span>
              </td>
              <td>{leftIn(chair, canal)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

/** The way on from here, where a step has its answers. */
export function EndingAnswers({ caseId }: { caseId: string }) {
  return (
    <StepAnswers>
      <a class="button main" href={`/cases/${caseId}/chair/close`}>
        {words.visit.close}
      </a>
      <a class="button answer" href={`/cases/${caseId}/record`}>
        {words.ending.record}
      </a>
    </StepAnswers>
  )
}

interface Insertion {
  readonly name: string
  readonly size: number
  readonly depth_um: number
}

/** What was in a canal, and how deep; an instrument that reached its stop was there. */
function insertionsIn(chair: Chair, canal: string): Insertion[] {
  const walk = chair.course.canals[canal]?.walk
  return (walk?.left ?? []).flatMap(({ node, exit, depth_um }) => {
    const step = walk?.sheet.nodes[node]
    const instrument = step?.kind === 'do' ? instrumentOf(chair, step.instrument) : undefined
    const deep_um = depth_um ?? (exit === 'reached' && step?.kind === 'do' ? step.stop_um : null)
    return instrument && deep_um !== null ? [{ name: instrument.name, size: instrument.size, depth_um: deep_um }] : []
  })
}

const deepestOf = (all: readonly Insertion[]): number | undefined =>
  all.length > 0 ? Math.max(...all.map(({ depth_um }) => depth_um)) : undefined

/** How deep the work came, and the largest instrument that came as deep. */
function doneIn(chair: Chair, { canal }: CanalPlan): string {
  const all = insertionsIn(chair, canal)
  const deepest_um = deepestOf(all)
  const there = all.filter(({ depth_um }) => depth_um === deepest_um).sort((a, b) => b.size - a.size)
  return deepest_um === undefined ? '–' : `${mm(deepest_um / 1000)} · ${there[0]?.name}`
}

function rinsedIn({ events, course }: Chair, canal: string): string {
  const ml = Object.values(givenIn(canal, events, course.undone)).reduce((sum, each) => sum + each, 0)
  return ml > 0 ? words.card.ml(ml) : ''
}

/** What the work leaves behind in a canal: how far it stayed from its end, or that it was not worked. */
function leftIn(chair: Chair, canal: CanalPlan): string {
  const state = chair.course.canals[canal.canal]?.state ?? 'open'
  if (state !== 'finished') return words.chair.state[state]
  const deepest_um = deepestOf(insertionsIn(chair, canal.canal))
  if (canal.end_mm === null || deepest_um === undefined) return words.ending.asPlanned
  const short_um = Math.round(canal.end_mm * 1000) - deepest_um
  if (short_um === 0) return words.ending.asPlanned
  return words.ending.apart(mm(Math.abs(short_um) / 1000), short_um < 0)
}
