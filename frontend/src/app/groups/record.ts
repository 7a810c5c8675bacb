export { Account } from '@/screens/account/account'
export { Keys } from '@/screens/keys/keys'
export { Record } from '@/screens/record/record'
export { Systems } from '@/screens/systems/systems'
