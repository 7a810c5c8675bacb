import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { vi } from 'vitest'
import type { EventPayload, Plan, RunSheet, Setting } from '@/api/shapes'
import type { Chair } from '@/store/chair/chair'
import { CaseState } from '@/walk/course'
import { eventsOf, inForce, type Written } from './sample-events'
import { canal, instrument } from './sample-plan'

const shared = JSON.parse(readFileSync(join(import.meta.dirname, '../shared/courses.json'), 'utf8')) as {
  sheets: Record<string, RunSheet>
}

/** A chair with two canals of one root, MB1 and MB2, after these events; what is recorded goes to `payloads`. */
export function chairAfter(events: readonly Written[], setting: Setting = 'clinic') {
  const happened = eventsOf(events)
  const { small, second } = shared.sheets as { small: RunSheet; second: RunSheet }
  const plan = {
    setting,
    canals: [
      canal('MB1', 19, { reference_point: 'MB cusp', run_sheet: small }),
      canal('MB2', 18, { reference_point: 'MB cusp', run_sheet: second }),
    ],
    tray_list: [{ instrument: { ...instrument(10, 2, 'hand', 'purple'), key: '10' } }],
  } as unknown as Plan
  const course = new CaseState({ A: { MB1: small, MB2: second } }, [inForce('A'), ...happened], setting)
  const payloads: EventPayload[] = []
  const record = vi.fn(async (_canal: string, _node: string, payload: EventPayload) => void payloads.push(payload))
  const chair = {
    caseId: 'k1',
    plan,
    course,
    events: happened,
    waiting: [],
    treatment: { events: [] },
    record,
  } as unknown as Chair
  return { chair, payloads, record }
}
