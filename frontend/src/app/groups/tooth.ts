export { Canal } from '@/screens/case/canal'
export { Case } from '@/screens/case/case'
export { NewCase } from '@/screens/new-case/new-case'
export { Planning } from '@/screens/plan/plan'
