import * as calls from '@/api/calls'
import { Refused, Unreachable } from '@/api/problem'
import type { Tooth, ToothName } from '@/api/shapes'
import { read, write } from '@/store/device/database'
import { words } from '@/words/en'

export interface ToothSearch {
  readonly tooth?: Tooth
  /** Why there is none. */
  readonly wrong?: string
}

const EVERYONE = 'everyone' // teeth belong to nobody

/** The tooth of that name: from the server, or as this phone saw it before. */
export async function findTooth(name: ToothName): Promise<ToothSearch> {
  const key = `tooth ${name.notation} ${name.designation}`
  try {
    const tooth = await calls.findTooth(name)
    await write('kept', EVERYONE, key, tooth).catch(() => undefined)
    return { tooth }
  } catch (error) {
    if (error instanceof Refused) return { wrong: error.fields[0]?.detail ?? error.message }
    if (!(error instanceof Unreachable)) throw error
    const copy = await read('kept', EVERYONE, key).catch(() => undefined)
    return copy ? { tooth: copy.value as Tooth } : { wrong: words.signIn.unreachable }
  }
}
