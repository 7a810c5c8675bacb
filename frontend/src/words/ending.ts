/** Words of a tooth of which no step is due any more. */
export const ending = {
  title: 'All canals are finished',
  heads: ['Canal', 'Planned', 'Done', 'Left'],
  asPlanned: 'as planned',
  apart: (mm: string, isPast: boolean) => `${mm} ${isPast ? 'past the plan' : 'short of the plan'}`,
  record: 'See the record',
}
