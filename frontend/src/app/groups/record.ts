export { Account } from '@/screens/account/account'
export { Record } from '@/screens/record/record'
