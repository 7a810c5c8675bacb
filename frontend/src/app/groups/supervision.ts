export { ToldToSupervisors } from '@/screens/worklist/told-to-supervisors'
export { Worklist } from '@/screens/worklist/worklist'
