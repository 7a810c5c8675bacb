export { Exercise } from '@/screens/practice/exercise'
export { Practice } from '@/screens/practice/practice'
