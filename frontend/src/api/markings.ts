import { answerTo, http } from './client'
import type {
  BendInSpaceShown,
  BendsInSpaceShown,
  MarkingShown,
  MarkingsShown,
  NewBendInSpace,
  NewMarking,
  TwoViewsRead,
  Views,
} from './shapes'

interface Sent {
  readonly id: string
  readonly caseId: string
  readonly imageId: string
  readonly body: NewMarking
}

export const listMarkings = (case_id: string, image_id: string): Promise<MarkingsShown> =>
  answerTo(
    http.GET('/api/v1/cases/{case_id}/images/{image_id}/markings', { params: { path: { case_id, image_id } } }),
    {
      markings: 'list',
    },
  )

export const sendMarking = ({ id, caseId, imageId, body }: Sent): Promise<MarkingShown> =>
  answerTo(
    http.PUT('/api/v1/cases/{case_id}/images/{image_id}/markings/{marking_id}', {
      params: { path: { case_id: caseId, image_id: imageId, marking_id: id } },
      body,
    }),
    { id: 'string' },
  )

/** What two views of one root tell together. */
export const readTwoViews = (views: Views): Promise<TwoViewsRead> =>
  answerTo(http.POST('/api/v1/compute/two-views', { body: { views } }), { why: 'string' })

export const listBendsInSpace = (canal_id: string): Promise<BendsInSpaceShown> =>
  answerTo(http.GET('/api/v1/canals/{canal_id}/bends-in-space', { params: { path: { canal_id } } }), {
    results: 'list',
  })

export const combineViews = (canal_id: string, bend_id: string, body: NewBendInSpace): Promise<BendInSpaceShown> =>
  answerTo(
    http.PUT('/api/v1/canals/{canal_id}/bends-in-space/{bend_id}', { params: { path: { canal_id, bend_id } }, body }),
    { id: 'string' },
  )
