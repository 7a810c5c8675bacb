import * as calls from '@/api/calls'
import type { NewOverride, Override } from '@/api/shapes'
import { refresh } from './cached'
import { refreshCase } from './cases'
import { versionName } from './plans'

interface Version {
  readonly id: string
  readonly case: string
}

/** A supervisor lets the work go on in spite of a caution; the plan has to be made again with it. */
export async function addOverride(version: Version, body: NewOverride): Promise<void> {
  await calls.addOverride(version.case, body)
  await again(version)
}

/** Takes it back: the next plan withholds again. */
export async function withdrawOverride(version: Version, override: Override): Promise<void> {
  await calls.withdrawOverride(override.id)
  await again(version)
}

async function again(version: Version): Promise<void> {
  await refreshCase(version.case)
  await refresh(versionName(version.id), () => calls.getVersion(version.id))
}
