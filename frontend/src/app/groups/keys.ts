export { Keys } from '@/screens/keys/keys'
