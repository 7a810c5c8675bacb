export { Case } from '@/screens/case/case'
export { NewCase } from '@/screens/new-case/new-case'
export { Review } from '@/screens/review/review'
