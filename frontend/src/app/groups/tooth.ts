export { Case } from '@/screens/case/case'
export { NewCase } from '@/screens/new-case/new-case'
export { Planning } from '@/screens/plan/plan'
export { Review } from '@/screens/review/review'
