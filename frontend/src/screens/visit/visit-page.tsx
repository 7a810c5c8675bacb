import type { ComponentChildren } from 'preact'
import { Notice } from '@/parts/notice'
import { Page } from '@/parts/page'
import { Seen } from '@/parts/seen'
import { useCase } from '@/store/cache/cases'
import { type Chair, useChair, useTreatment } from '@/store/chair/chair'
import { works } from '@/store/chair/part'
import { words } from '@/words/en'
import './visit.css'

interface Props {
  id: string
  title: string
  children: (chair: Chair) => ComponentChildren
}

/** A screen beside the chair, on the same course. */
export function VisitPage({ id, title, children }: Props) {
  const of = useCase(id).value
  const treatment = useTreatment(id)
  const chair = useChair(id, treatment.value)
  return (
    <Page
      title={title}
      under={of && `${of.tooth.iso} · ${of.patient_alias} · ${words.setting[of.setting]}`}
      back={{ to: `/cases/${id}/chair`, says: words.back }}
    >
      <Seen of={treatment} rows={5}>
        {() => {
          if (!chair) return <Notice sign="note">{words.chair.notHere}</Notice>
          return works(chair.course) ? children(chair) : <Notice sign="stop">{words.look.notYours}</Notice>
        }}
      </Seen>
    </Page>
  )
}
