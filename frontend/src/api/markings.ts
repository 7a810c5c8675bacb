import { http, told } from './client'
import type { MarkingShown, MarkingsShown, NewMarking, TwoViewsRead, Views } from './shapes'

interface Sent {
  readonly id: string
  readonly caseId: string
  readonly imageId: string
  readonly body: NewMarking
}

export const listMarkings = (case_id: string, image_id: string): Promise<MarkingsShown> =>
  told(http.GET('/api/v1/cases/{case_id}/images/{image_id}/markings', { params: { path: { case_id, image_id } } }))

export const sendMarking = ({ id, caseId, imageId, body }: Sent): Promise<MarkingShown> =>
  told(
    http.PUT('/api/v1/cases/{case_id}/images/{image_id}/markings/{marking_id}', {
      params: { path: { case_id: caseId, image_id: imageId, marking_id: id } },
      body,
    }),
  )

/** What two views of one root tell together. */
export const readTwoViews = (views: Views): Promise<TwoViewsRead> =>
  told(http.POST('/api/v1/compute/two-views', { body: { views } }))
