import { answerTo, done, http, LISTED, NAMED, ofProgramme, tag } from './client'
import type * as S from './shapes'

// --- keys by which programs sign in ---

export const listKeys = () => answerTo(http.GET('/api/v1/keys'), LISTED)

export const makeKey = (body: S.NewKey) => answerTo(http.POST('/api/v1/keys', { body }), { text: 'string' })

export const revokeKey = (key_id: string) =>
  done(http.DELETE('/api/v1/keys/{key_id}', { params: { path: { key_id } } }))

export const listServiceKeys = (programme: string) =>
  answerTo(http.GET('/api/v1/programmes/{programme_id}/service-keys', ofProgramme(programme)), LISTED)

export const makeServiceKey = (programme: string, body: S.NewKey) =>
  answerTo(http.POST('/api/v1/programmes/{programme_id}/service-keys', { ...ofProgramme(programme), body }), {
    text: 'string',
  })

export const revokeServiceKey = (programme_id: string, key_id: string) =>
  done(
    http.DELETE('/api/v1/programmes/{programme_id}/service-keys/{key_id}', {
      params: { path: { programme_id, key_id } },
    }),
  )

// --- people of the programme, and joining it ---

export const listPeople = (programme_id: string, cursor?: string) =>
  answerTo(
    http.GET('/api/v1/programmes/{programme_id}/people', {
      params: { path: { programme_id }, query: { limit: 100, ...(cursor === undefined ? {} : { cursor }) } },
    }),
    LISTED,
  )

const ofPerson = (programme_id: string, person_id: string) => ({ params: { path: { programme_id, person_id } } })

export const changePerson = (programme: string, person: string, body: S.PersonChanges) =>
  answerTo(
    http.PATCH('/api/v1/programmes/{programme_id}/people/{person_id}', { ...ofPerson(programme, person), body }),
    { role: 'string' },
  )

export const endPerson = (programme: string, person: string) =>
  done(http.DELETE('/api/v1/programmes/{programme_id}/people/{person_id}', ofPerson(programme, person)))

export const listInvitations = (programme_id: string) =>
  answerTo(
    http.GET('/api/v1/programmes/{programme_id}/invitations', {
      params: { path: { programme_id }, query: { limit: 100, state: 'open' } },
    }),
    LISTED,
  )

export const checkPeopleList = (programme: string, text: string) =>
  answerTo(
    http.POST('/api/v1/programmes/{programme_id}/people-list-check', { ...ofProgramme(programme), body: { text } }),
    { lines: 'list' },
  )

export const invite = (programme: string, people: S.Invited[]) =>
  answerTo(
    http.POST('/api/v1/programmes/{programme_id}/invitations', { ...ofProgramme(programme), body: { people } }),
    {
      made: 'list',
    },
  )

const ofInvitation = (programme_id: string, invitation_id: string) => ({
  params: { path: { programme_id, invitation_id } },
})

export const renewInvitation = (programme: string, id: string) =>
  answerTo(
    http.POST('/api/v1/programmes/{programme_id}/invitations/{invitation_id}/link', {
      ...ofInvitation(programme, id),
      body: {},
    }),
    { link: 'string' },
  )

export const withdrawInvitation = (programme: string, id: string) =>
  done(http.DELETE('/api/v1/programmes/{programme_id}/invitations/{invitation_id}', ofInvitation(programme, id)))

// --- other systems of the programme ---

export const listWebhooks = (programme: string) =>
  answerTo(http.GET('/api/v1/programmes/{programme_id}/webhooks', ofProgramme(programme)), LISTED)

export const setWebhook = (programme_id: string, webhook_id: string, revision: number, state: S.WebhookSet) =>
  answerTo(
    http.PATCH('/api/v1/programmes/{programme_id}/webhooks/{webhook_id}', {
      params: { path: { programme_id, webhook_id }, header: { 'If-Match': tag(revision) } },
      body: { state },
    }),
    NAMED,
  )

export const listClients = (programme: string) =>
  answerTo(http.GET('/api/v1/programmes/{programme_id}/clients', ofProgramme(programme)), LISTED)

export const revokeClient = (programme_id: string, client_id: string) =>
  done(
    http.DELETE('/api/v1/programmes/{programme_id}/clients/{client_id}', {
      params: { path: { programme_id, client_id } },
    }),
  )

export const listPlatforms = (programme: string) =>
  answerTo(http.GET('/api/v1/programmes/{programme_id}/lti-platforms', ofProgramme(programme)), LISTED)

export const putPlatform = (programme_id: string, platform_id: string, body: S.PlatformGiven) =>
  answerTo(
    http.PUT('/api/v1/programmes/{programme_id}/lti-platforms/{platform_id}', {
      params: { path: { programme_id, platform_id } },
      body,
    }),
    NAMED,
  )
