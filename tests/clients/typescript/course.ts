/** From a case to 'approved' with a generated client: what another system would write. Says at its end what happened. */

import { createClient, createConfig } from './made/client'
import {
    canalUpdate,
    casesCreate,
    kitsList,
    planVersionRetrieve,
    planVersionsCreate,
    planVersionSubmit,
    programmeChanges,
    readingsCreate,
    reviewsCreate,
} from './made'
import type { ReadingGivenRequest } from './made'

type Done = { kinds: string[]; version: string; read: string[] }
type Asked = { url: string; programme: string; student: string; keys: Record<'service' | 'student' | 'supervisor', string> }

/** The address, the ids and the keys come as JSON; the kinds of change since then, the version's id and what was read of it go out so. */
export async function course({ url, programme, student, keys }: Asked): Promise<Done> {
    const signedIn = (key: string) =>
        createClient(createConfig({ baseUrl: url, headers: { Authorization: `Bearer ${key}` }, throwOnError: true }))
    const service = signedIn(keys.service)
    const own = signedIn(keys.student)
    const path = { programme_id: programme }

    const { data: before } = await programmeChanges({ client: service, path, query: { after: 'last' }, throwOnError: true })
    const tooth = { notation: 'iso_3950', designation: '27' } as const
    const opens = { patient_alias: 'Reed 12', setting: 'extracted', tooth, student_id: student } as const
    const { data: opened } = await casesCreate({ client: service, path, body: opens, throwOnError: true })
    for (const canal of opened.canals) {
        const at = { client: service, path: { canal_id: canal.id }, throwOnError: true } as const
        await canalUpdate({ ...at, body: { finding: 'found' } })
        const reference_point = canal.reference_point
        const readings: ReadingGivenRequest['reading'][] = [
            { method: 'pre_operative_image', tooth_mm: 21.5, reference_point },
            { method: 'confirming_image', set_mm: 20, tip_short_mm: 0.5, reference_point },
        ]
        for (const reading of readings) await readingsCreate({ ...at, body: { reading } })
    }

    const { data: kits } = await kitsList({ client: own, path, throwOnError: true })
    const kit = kits.results[0]
    if (!kit) throw new Error('The programme has no kit.')
    const plan = { kit_id: kit.id, technique: 'crown-down', choices: { needle: { gauge: 30, tip: 'open' } } } as const
    const of = { path: { case_id: opened.id }, throwOnError: true } as const
    const { data: version } = await planVersionsCreate({ client: own, ...of, body: plan })
    const read = { path: { version_id: version.id }, headers: { 'If-Match': `"${version.hash}"` }, throwOnError: true } as const
    await planVersionSubmit({ client: own, ...read })
    const supervisor = signedIn(keys.supervisor)
    const expand = ['plan', 'given'] as const
    const { data: shown } = await planVersionRetrieve({ client: supervisor, path: read.path, query: { expand: [...expand] }, throwOnError: true })
    await reviewsCreate({ client: supervisor, ...read, body: { decision: 'approved' } })

    const { data: since } = await programmeChanges({ client: service, path, query: { after: before.next }, throwOnError: true })
    return { kinds: since.results.map((change) => change.kind), version: version.id, read: expand.filter((name) => shown[name]) }
}
