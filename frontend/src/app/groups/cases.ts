export { Cases } from '@/screens/cases/cases'
