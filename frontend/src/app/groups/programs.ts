export { Keys } from '@/screens/keys/keys'
export { Systems } from '@/screens/systems/systems'
