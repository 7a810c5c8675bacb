import { useState } from 'preact/hooks'
import type { CanalPlan } from '@/api/shapes'
import { MethodFields } from '@/panels/readings/method-fields'
import { emptyFields, lacking, type Method, type ReadingFields, toReading } from '@/panels/readings/reading-fields'
import { Select, Tick } from '@/parts/fields'
import { useDraft } from '@/store/cache/hooks'
import type { Chair } from '@/store/chair/chair'
import { uuid7 } from '@/store/device/uuid7'
import { mm } from '@/units/millimetres'
import type { CanalProgress } from '@/walk/course'
import { words } from '@/words/en'

interface Props {
  chair: Chair
  canal: CanalPlan
  course: CanalProgress
}

/** The length the work goes by, and taking it again. What is recorded is an event like any other. */
export function LengthAgain({ chair, canal, course }: Props) {
  const { stop_mm } = canal.length
  return (
    <details class="bands-board" key={course.walk.sheet.start}>
      <summary>{stop_mm === null ? words.lengthAgain.none : words.lengthAgain.summary(mm(stop_mm))}</summary>
      <Form chair={chair} canal={canal} course={course} />
    </details>
  )
}

function Form({ chair, canal, course }: Props) {
  const methods: readonly Method[] =
    chair.plan.setting === 'clinic'
      ? ['confirming_image', 'apex_locator']
      : ['confirming_image', 'apex_locator', 'direct_sight']
  const first = () => ({
    ...emptyFields(uuid7(), chair.plan.setting === 'block' ? 'direct_sight' : 'confirming_image'),
    after_flaring: flared(chair, course),
  })
  const draft = useDraft(`length at the chair of ${chair.caseId} ${canal.canal}`, first)
  const [tried, setTried] = useState(false)
  const fields = draft.fields.value
  const lacks = tried ? lacking(fields) : []
  const wrong = (field: keyof ReadingFields) => {
    if (!lacks.includes(field)) return undefined
    return field.endsWith('_mm') ? words.fields.noNumber : words.required
  }
  const submit = async (event: Event) => {
    event.preventDefault()
    setTried(true)
    if (lacking(fields).length > 0) return
    const taken = toReading(fields, canal.reference_point)
    if (!(await chair.record(canal.canal, '', { kind: 'reading', taken }))) return
    await draft.clear(first())
    setTried(false)
  }
  return (
    <form class="stack" onSubmit={(event) => void submit(event)} aria-label={words.lengthAgain.none}>
      <Select
        label={words.reading.method}
        value={fields.method}
        options={methods.map((value) => ({ value, says: words.reading.short[value] ?? value }))}
        onChoose={(method) => draft.set({ method: method as Method })}
      />
      <MethodFields fields={fields} set={draft.set} wrong={wrong} begins={canal.length.stop_mm ?? 20} />
      <Tick
        label={words.reading.afterFlaring}
        checked={fields.after_flaring}
        onChange={(after_flaring) => draft.set({ after_flaring })}
      />
      <p class="small soft">
        {words.lengthAgain.from(canal.reference_point)} {words.lengthAgain.says}
      </p>
      <button type="submit" class="button main">
        {words.lengthAgain.save}
      </button>
    </form>
  )
}

/** Whether the canal has been flared coronally: a length taken since is told apart from one before. */
function flared({ version }: Chair, { walk }: CanalProgress): boolean {
  const phases = version.given.technique.phases.filter((phase) => phase.kind === 'flare').map((phase) => phase.key)
  const steps = [...walk.left.map((step) => step.node), ...Object.keys(walk.sheet.walked_before?.passes ?? {})]
  return steps.some((step) => phases.includes(step.split('/')[0] ?? ''))
}
