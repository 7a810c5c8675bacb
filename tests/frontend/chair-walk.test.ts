import { describe, expect, test } from 'vitest'
import { instrumentsOf, toLookAt } from '@/walk/instruments'
import { givenIn, irrigantAt, irrigantsOf } from '@/walk/irrigants'
import { nextAtTray } from '@/walk/tray'
import { placeOf } from '@/walk/walk'
import { chairAfter, HAND, joinedCanals, left, ROTARY } from './sample-work'

// Expected values are counted by hand on the sample's steps: shape, rinse, small, edta, again.
const DONE_IN_MB = [left('shape', 'short', { depth_um: 12000 }), left('rinse', 'done'), left('small', 'reached')]
type Made = ReturnType<typeof chairAfter>['chair']

function nodeOf({ course }: Made, canal: string) {
  const node = course.canals[canal]?.walk.node
  if (node?.kind !== 'do') throw new Error(canal)
  return node
}

describe('where one is', () => {
  const at = (events: Parameters<typeof chairAfter>[0]) => {
    const { chair } = chairAfter(events)
    const [canal] = chair.plan.canals
    const walk = chair.course.canals.MB?.walk
    if (!canal || !walk) throw new Error('MB')
    return placeOf(canal, walk)
  }
  test('the first of five steps', () => expect(at([])).toEqual({ step: 1, about: 5 }))
  test('the fourth of five after three', () => expect(at(DONE_IN_MB)).toEqual({ step: 4, about: 5 }))
  test('a small one that did not pass and is tried again makes the way longer', () =>
    expect(at([...DONE_IN_MB.slice(0, 2), left('small', 'blocked')])).toEqual({ step: 4, about: 6 }))
})

describe('next at the tray', () => {
  const next = (events: Parameters<typeof chairAfter>[0]) => {
    const { plan, course } = chairAfter(events).chair
    return nextAtTray(plan.tray, plan.canals, course.canals)
  }
  test('at the start the first canal of the first taking-up', () =>
    expect(next([])).toEqual({ canal: 'MB', instrument: ROTARY }))
  test('once done in one canal, the other before the second time', () =>
    expect(next(DONE_IN_MB)).toEqual({ canal: 'DB', instrument: ROTARY }))
  test('done in both, back to the first', () =>
    expect(next([...DONE_IN_MB, ...DONE_IN_MB.map((event) => ({ ...event, canal: 'DB' }))])?.canal).toBe('MB'))
  test('a canal that waits for one that joins it is passed over until that one has come so far', () => {
    const joined = (events: Parameters<typeof chairAfter>[0]) => {
      const { plan, course } = chairAfter(events, { canals: joinedCanals() }).chair
      return nextAtTray(plan.tray, plan.canals, course.canals)
    }
    expect(joined(DONE_IN_MB)?.canal).toBe('MB')
    expect(joined([...DONE_IN_MB, left('edta', 'done')])?.canal).toBe('DB')
  })
  test('a canal that stands still is passed over', () =>
    expect(next([...DONE_IN_MB, { kind: 'pause', canal: 'DB' }])?.canal).toBe('MB'))
})

describe('instruments', () => {
  const due = (events: Parameters<typeof chairAfter>[0], canal: string) => {
    const { chair } = chairAfter(events)
    return toLookAt(instrumentsOf(chair.events, chair.course), canal, nodeOf(chair, canal))
  }
  const inspected = (instrument: string, state: string) => ({
    kind: 'inspected' as const,
    canal: '',
    payload: { instrument, found: state, why: 'Bent' },
  })
  test('what comes from another canal is looked at, all of it', () =>
    expect(due(DONE_IN_MB, 'DB')).toEqual([ROTARY, HAND]))
  test('once looked at it is not asked for again', () =>
    expect(due([...DONE_IN_MB, inspected(ROTARY, 'whole'), inspected(HAND, 'whole')], 'DB')).toEqual([]))
  test('the small one passes again in its canal without being asked for', () =>
    expect(due([...DONE_IN_MB.slice(0, 2), left('small', 'blocked')], 'MB')).toEqual([]))
  test('what cuts is looked at before it cuts once more', () =>
    expect(due([...DONE_IN_MB, left('edta', 'done')], 'MB')).toEqual([ROTARY]))
  test('an undone use is none', () =>
    expect(due([...DONE_IN_MB.slice(0, 1), { kind: 'undo', payload: { undoes: 'e1' } }], 'DB')).toEqual([]))
  test('a discard lasts until a new one is found whole', () => {
    const inUse = (events: Parameters<typeof chairAfter>[0]) => {
      const { chair } = chairAfter(events)
      return instrumentsOf(chair.events, chair.course).get(ROTARY)?.discarded
    }
    const discarded = [...DONE_IN_MB, inspected(ROTARY, 'discarded')]
    expect(inUse(discarded)).toBe('Bent')
    expect(inUse([...discarded, inspected(ROTARY, 'whole')])).toBeNull()
  })
})

describe('irrigants', () => {
  const accident = { kind: 'emergency' as const, canal: '', payload: { what: 'hypochlorite_accident' } }
  const toRinse = DONE_IN_MB.slice(0, 1)
  test('as planned, and saline may be given at any time', () => {
    const { chair } = chairAfter(toRinse)
    expect(irrigantAt(chair.course, nodeOf(chair, 'MB'))).toBe('sodium_hypochlorite')
    expect(irrigantsOf(chair.course)).toEqual(['sodium_hypochlorite', 'edta', 'saline'])
  })
  test('after an accident saline alone, also where nothing is halted any more', () => {
    const kept = { kind: 'resume' as const, canal: '', actor: 'v', payload: { keep_saline: true } }
    for (const events of [
      [...toRinse, accident],
      [...toRinse, accident, kept],
    ]) {
      const { chair } = chairAfter(events)
      expect(irrigantAt(chair.course, nodeOf(chair, 'MB'))).toBe('saline')
      expect(irrigantsOf(chair.course)).toEqual(['saline'])
    }
  })
  test('what went into a canal adds up by irrigant; undone does not count, out of course does', () => {
    // By hand: 2 + 1.5 of hypochlorite in MB; the 5 undone, the 3 of DB elsewhere, the 2 on a step that was not due count.
    const water = { irrigant: 'sodium_hypochlorite', volume_ml: 2 }
    const { chair } = chairAfter([
      ...toRinse,
      left('rinse', 'done', water),
      { kind: 'irrigated', payload: { irrigant: 'sodium_hypochlorite', volume_ml: 1.5 } },
      { kind: 'irrigated', payload: { irrigant: 'saline', volume_ml: 5 } },
      { kind: 'undo', payload: { undoes: 'e4' } },
      { kind: 'irrigated', canal: 'DB', payload: { irrigant: 'sodium_hypochlorite', volume_ml: 3 } },
      left('rinse', 'done', { irrigant: 'edta', volume_ml: 2 }),
    ])
    expect(chair.course.outOfCourse).toEqual({ e7: 'other_step' })
    expect(givenIn('MB', chair.events, chair.course.undone)).toEqual({ sodium_hypochlorite: 3.5, edta: 2 })
  })
})
