import * as calls from '@/api/programme'
import type { InvitationWithLink, Invited, PersonChanges, PersonInProgramme } from '@/api/shapes'
import { membership } from '@/store/session/session'
import { refresh } from './cached'
import { useCached } from './hooks'

const PEOPLE = 'people'
const INVITED = 'invitations'
const programme = () => membership.value?.programme.id ?? ''
const askInvited = () => calls.listInvitations(programme())

/** Everybody, from all pages. */
async function askPeople(): Promise<{ results: PersonInProgramme[] }> {
  const results: PersonInProgramme[] = []
  let cursor: string | undefined
  do {
    const page = await calls.listPeople(programme(), cursor)
    results.push(...page.results)
    cursor = page.next === null ? undefined : (new URL(page.next).searchParams.get('cursor') ?? undefined)
  } while (cursor !== undefined)
  return { results }
}

export const usePeople = () => useCached(PEOPLE, askPeople)
export const useInvited = () => useCached(INVITED, askInvited)

export async function changePerson(id: string, changes: PersonChanges) {
  await calls.changePerson(programme(), id, changes).finally(() => refresh(PEOPLE, askPeople))
}

export async function endPerson(id: string) {
  await calls.endPerson(programme(), id)
  await refresh(PEOPLE, askPeople)
}

export const checkList = (text: string) => calls.checkPeopleList(programme(), text)

/** The links are given to the screen and kept nowhere. Nobody waits for the list of who is invited: it tells of a lost answer. */
export function invite(people: Invited[]) {
  return calls.invite(programme(), people).finally(() => void refresh(INVITED, askInvited))
}

/** Another link in place of the one before. */
export function renewInvitation(id: string): Promise<InvitationWithLink> {
  return calls.renewInvitation(programme(), id).finally(() => void refresh(INVITED, askInvited))
}

export async function withdrawInvitation(id: string) {
  await calls.withdrawInvitation(programme(), id)
  await refresh(INVITED, askInvited)
}
