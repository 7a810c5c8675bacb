import type { Role } from '@/api/shapes'
import { words } from '@/words/en'

export const ROLES = (Object.keys(words.people.role) as Role[]).map((value) => ({
  value,
  says: words.people.role[value],
}))
