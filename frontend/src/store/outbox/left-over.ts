import { useEffect, useState } from 'preact/hooks'
import { database } from '@/store/device/database'
import type { PendingReading, Unsent } from '@/store/device/schema'
import { uuid7 } from '@/store/device/uuid7'
import { personId, session } from '@/store/session/session'
import { emergenciesByCase, wayOf } from './emergencies'
import { changed } from './outbox'
import { rangeOfPerson } from './pending'
import { send } from './sender'

// What waits on this phone of the person who is signed in, case by case: to be seen, saved elsewhere, and set aside.

const LOOK_MS = 3000

/** What waits of one case. */
export interface LeftOver {
  readonly caseId: string
  readonly work: readonly Unsent[]
  readonly readings: readonly PendingReading[]
  readonly emergencies: ReturnType<typeof emergenciesByCase>
  /** When the first of it was done, by this phone's clock. */
  readonly since: number
}

export const countOf = ({ work, readings, emergencies }: LeftOver) => work.length + readings.length + emergencies.length

/** The server's sentence on the first entry that it would not take; undefined where nothing was refused. */
export const refusedOf = ({ caseId, work, readings }: LeftOver): string | undefined =>
  [...work, ...readings].find((entry) => entry.refused !== undefined)?.refused ?? (wayOf(caseId)?.says || undefined)

/** Ids begin with the milliseconds at which they were made (RFC 9562, version 7). */
const madeAt = (id: string) => Number.parseInt(id.replace(/-/g, '').slice(0, 12), 16)

export async function leftOver(): Promise<readonly LeftOver[]> {
  const db = await database()
  const mine = rangeOfPerson(personId())
  const [work, readings] = await Promise.all([db.getAll('outbox', mine), db.getAll('taken', mine)])
  const emergencies = emergenciesByCase()
  const cases = [...new Set([...emergencies, ...work, ...readings].map((entry) => entry.caseId))]
  return cases.map((caseId) => {
    const of = <T extends { caseId: string }>(every: readonly T[]) => every.filter((entry) => entry.caseId === caseId)
    const here = { work: of(work), readings: of(readings), emergencies: of(emergencies) }
    const ids = [
      ...here.work.map(({ event }) => event.id),
      ...[...here.readings, ...here.emergencies].map(({ id }) => id),
    ]
    return { caseId, ...here, since: Math.min(...ids.map(madeAt)) }
  })
}

/** The same for a screen, looked at again every few seconds. */
export function useLeftOver(): readonly LeftOver[] {
  const [entries, setEntries] = useState<readonly LeftOver[]>([])
  // A store that cannot be read says so itself.
  const look = () => void leftOver().then(setEntries, () => undefined)
  useEffect(() => {
    look()
    const timer = setInterval(() => document.visibilityState === 'visible' && look(), LOOK_MS)
    return () => clearInterval(timer)
  }, [personId()])
  return entries
}

/** All of it as a file in plain form: what it is, whose, and each entry as it would be sent. */
export function fileOf(left: readonly LeftOver[], now = new Date()): File {
  const content = {
    what: 'Entries of Fourth Canal that the server has not taken yet. They are still on the phone and are sent when they can be.',
    saved_at: now.toISOString(),
    person: session.value?.person,
    cases: left.map(({ caseId, work, readings, emergencies }) => ({
      case: caseId,
      work: work.map(({ event, refused }) => ({ ...event, refused })),
      readings: readings.map(({ canal, id, reading, junction, refused }) => ({
        canal,
        id,
        reading,
        junction,
        refused,
      })),
      emergencies: emergencies.map(({ event }) => event),
    })),
  }
  const name = `not-sent-${now.toISOString().slice(0, 10)}.json`
  return new File([JSON.stringify(content, null, 2)], name, { type: 'application/json' })
}

/** Hands the file to another app where the phone can, else saves it. */
export async function saveElsewhere(file: File): Promise<void> {
  const { share, canShare } = navigator as Partial<Navigator>
  if (share && canShare?.call(navigator, { files: [file] }))
    return share.call(navigator, { files: [file] }).catch(() => undefined)
  const link = document.createElement('a')
  link.href = URL.createObjectURL(file)
  link.download = file.name
  link.click()
  setTimeout(() => URL.revokeObjectURL(link.href), LOOK_MS)
}

/** What was set aside on this phone, whole. */
export const asideName = (person: string) => `set aside of ${person}`

/**
 * Sets a refused entry aside, so that the rest goes on. It stays on the phone; in its place, with its number, the
 * server is told by a note what was set aside and why.
 */
export async function setAside({ person, caseId, seq }: Unsent, noteOf: (entry: Unsent) => string): Promise<void> {
  const tx = (await database()).transaction(['outbox', 'device'], 'readwrite', { durability: 'strict' })
  const [entry, before] = await Promise.all([
    tx.objectStore('outbox').get([person, caseId, seq]),
    tx.objectStore('device').get(asideName(person)) as Promise<readonly Unsent[] | undefined>,
  ])
  // Another tab may have seen it acknowledged, or set it aside.
  if (entry?.refused !== undefined) {
    const payload = { kind: 'note' as const, text: noteOf(entry) }
    const event = { ...entry.event, id: uuid7(), node: '', payload }
    await tx.objectStore('outbox').put({ person, caseId, seq, event })
    await tx.objectStore('device').put([...(before ?? []), entry], asideName(person))
  }
  await tx.done
  await changed(person, caseId)
  void send()
}
