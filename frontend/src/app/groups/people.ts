export { Join } from '@/screens/join/join'
export { People } from '@/screens/people/people'
