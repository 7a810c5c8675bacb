import { keptLines } from '@/panels/marks/kept-lines'
import { MarkedList } from '@/panels/marks/marked-list'
import { Viewer } from '@/parts/viewer/viewer'
import { useCase } from '@/store/cache/cases'
import { useVersion } from '@/store/cache/plans'
import { useMarkings } from '@/store/images/markings'

interface Props {
  caseId: string
  imageId: string
  address: string
  name: string
  note: string | undefined
  /** Said of it before what was marked. */
  children: preact.ComponentChildren
  onClose: () => void
}

/** An image of the server over the whole screen, with what was marked on it and by whom. */
export function MarkedViewer({ caseId, imageId, children, ...viewer }: Props) {
  const { scale, markings = [] } = useMarkings(caseId, imageId).value ?? {}
  const of = useCase(caseId).value
  const plan = useVersion(of?.version?.id).value?.plan
  return (
    <Viewer {...viewer} rowPerColumn={scale?.row_per_column} lines={keptLines(markings, of?.canals ?? [], plan)}>
      {children}
      <MarkedList caseId={caseId} markings={markings} />
    </Viewer>
  )
}
