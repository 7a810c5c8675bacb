import { answerTo, answerUnlessOut, csrfToken, done, http, LISTED, NAMED, ofProgramme, tag } from './client'
import type * as S from './shapes'

const ofCase = (case_id: string) => ({ params: { path: { case_id } } })
const ofCanal = (canal_id: string) => ({ params: { path: { canal_id } } })
const ofVersion = (version_id: string) => ({ params: { path: { version_id } } })
const CASE = { ...NAMED, canals: 'list', revision: 'number' } as const
const VERSION = { ...NAMED, hash: 'string', texts: 'string' } as const
const TREATMENT = { events: 'list', position: 'number' } as const

// --- cases ---

export const listCases = (programme_id: string, cursor?: string) =>
  answerTo(
    http.GET('/api/v1/programmes/{programme_id}/cases', {
      params: { path: { programme_id }, query: cursor === undefined ? {} : { cursor } },
    }),
    LISTED,
  )

const LAST_CASES = 6

export const listCasesOf = (programme_id: string, student_id: string) =>
  answerTo(
    http.GET('/api/v1/programmes/{programme_id}/cases', {
      params: { path: { programme_id }, query: { student_id, limit: LAST_CASES } },
    }),
    LISTED,
  )

export const openCase = (programme: string, body: S.NewCase) =>
  answerTo(http.POST('/api/v1/programmes/{programme_id}/cases', { ...ofProgramme(programme), body }), NAMED)

export const getCase = (id: string) => answerTo(http.GET('/api/v1/cases/{case_id}', ofCase(id)), CASE)

export const changeCase = (case_id: string, revision: number, body: S.CaseChanges) =>
  answerTo(
    http.PATCH('/api/v1/cases/{case_id}', {
      params: { path: { case_id }, header: { 'If-Match': tag(revision) } },
      body,
    }),
    CASE,
  )

export const addOverride = (id: string, body: S.NewOverride) =>
  answerTo(http.POST('/api/v1/cases/{case_id}/overrides', { ...ofCase(id), body }), NAMED)

export const withdrawOverride = (override_id: string) =>
  answerTo(http.POST('/api/v1/overrides/{override_id}/withdraw', { params: { path: { override_id } } }), NAMED)

// --- canals ---

export const addCanal = (id: string, body: S.NewCanal) =>
  answerTo(http.POST('/api/v1/cases/{case_id}/canals', { ...ofCase(id), body }), NAMED)

export const changeCanal = (id: string, body: S.CanalFacts) =>
  answerTo(http.PATCH('/api/v1/canals/{canal_id}', { ...ofCanal(id), body }), NAMED)

export const removeCanal = (id: string) => done(http.DELETE('/api/v1/canals/{canal_id}', ofCanal(id)))

export const changeRoot = (case_id: string, name: string, body: Omit<S.RootInput, 'name'>) =>
  answerTo(http.PUT('/api/v1/cases/{case_id}/roots/{name}', { params: { path: { case_id, name } }, body }), CASE)

export const addReading = (canal: string, body: { id: string; reading: S.Reading }) =>
  answerTo(http.POST('/api/v1/canals/{canal_id}/readings', { ...ofCanal(canal), body }), NAMED)

export const addJunction = (canal: string, body: { id: string; junction: S.Junction }) =>
  answerTo(http.POST('/api/v1/canals/{canal_id}/junctions', { ...ofCanal(canal), body }), NAMED)

const struck = (reading_id: string, why: S.StruckWhy) => ({ params: { path: { reading_id } }, body: { why } })

export const strikeReading = (id: string, why: S.StruckWhy) =>
  answerTo(http.POST('/api/v1/readings/{reading_id}/strike', struck(id, why)), NAMED)

export const strikeJunction = (id: string, why: S.StruckWhy) =>
  answerTo(http.POST('/api/v1/junctions/{reading_id}/strike', struck(id, why)), NAMED)

// --- teeth, kits, techniques ---

export const findTooth = (body: S.ToothName) =>
  answerTo(http.POST('/api/v1/compute/tooth', { body }), { iso: 'string' })

export const getTooth = (iso: string) =>
  answerTo(http.GET('/api/v1/teeth/{iso}', { params: { path: { iso } } }), { iso: 'string' })

export const listFactors = () => answerTo(http.GET('/api/v1/difficulty-factors'), LISTED)

export const getProgramme = (id: string) =>
  answerTo(http.GET('/api/v1/programmes/{programme_id}', ofProgramme(id)), { supervisors: 'list' })

export const listKits = (programme: string) =>
  answerTo(http.GET('/api/v1/programmes/{programme_id}/kits', ofProgramme(programme)), LISTED)

export const listFigures = (programme: string) =>
  answerTo(http.GET('/api/v1/programmes/{programme_id}/figures', ofProgramme(programme)), LISTED)

export const listTechniques = (programme: string) =>
  answerTo(http.GET('/api/v1/programmes/{programme_id}/techniques', ofProgramme(programme)), LISTED)

// --- plans ---

export const previewPlan = (id: string, body: S.Asked) =>
  answerTo(http.POST('/api/v1/cases/{case_id}/preview', { ...ofCase(id), body }), { canals: 'list' })

/** What would go in otherwise than into the version of that number. */
export const previewChanges = (id: string, body: S.Asked, against: number) =>
  answerTo(http.POST('/api/v1/cases/{case_id}/preview/changes', { ...ofCase(id), body: { ...body, against } }), {
    tooth: 'list',
    canals: 'list',
  })

export const listVersions = (id: string) =>
  answerTo(http.GET('/api/v1/cases/{case_id}/plan-versions', ofCase(id)), LISTED)

export const proposePlan = (id: string, body: S.Asked & { id: string }) =>
  answerTo(http.POST('/api/v1/cases/{case_id}/plan-versions', { ...ofCase(id), body }), NAMED)

const getSlim = (id: string) => answerTo(http.GET('/api/v1/plan-versions/{version_id}', ofVersion(id)), VERSION)

/** What lies at the address of a hash never changes: a copy that the browser has is taken as it is. */
const getTexts = (version_id: string, hash_: string) =>
  answerTo(
    http.GET('/api/v1/plan-versions/{version_id}/texts/{hash_}', {
      params: { path: { version_id, hash_ } },
      cache: 'force-cache',
    }),
    { plan: 'object', given: 'object' },
  )

type Texts = Pick<S.VersionShown, 'hash' | 'plan' | 'given'>

/** The version as it stands now; `had` is what is known of it: its texts are not asked for again. */
export async function getVersion(id: string, had?: Texts): Promise<S.VersionShown> {
  const slim = await getSlim(id)
  const { plan, given: input } = had?.hash === slim.hash ? had : await getTexts(id, slim.hash)
  return { ...slim, plan, given: input, choices: input.choices }
}

export const submitPlan = (id: string) =>
  answerTo(http.POST('/api/v1/plan-versions/{version_id}/submit', ofVersion(id)), NAMED)

export const withdrawPlan = (id: string) =>
  answerTo(http.POST('/api/v1/plan-versions/{version_id}/withdraw', ofVersion(id)), NAMED)

export const getChanges = (id: string) =>
  answerTo(http.GET('/api/v1/plan-versions/{version_id}/changes', ofVersion(id)), { changes: 'there' })

export const listWaiting = (programme: string) =>
  answerTo(http.GET('/api/v1/programmes/{programme_id}/worklist', ofProgramme(programme)), LISTED)

export const review = (version_id: string, hash: string, body: S.NewReview) =>
  answerTo(
    http.POST('/api/v1/plan-versions/{version_id}/reviews', {
      params: { path: { version_id }, header: { 'If-Match': tag(hash) } },
      body,
    }),
    NAMED,
  )

// --- at the chair ---

export const listRunning = (programme: string) =>
  answerTo(http.GET('/api/v1/programmes/{programme_id}/running-work', ofProgramme(programme)), LISTED)

export const getTreatment = (id: string) => answerTo(http.GET('/api/v1/cases/{case_id}/events', ofCase(id)), TREATMENT)

export const getBands = (id: string) =>
  answerTo(http.GET('/api/v1/cases/{case_id}/bands', ofCase(id)), { canals: 'list', position: 'number' })

interface Batch {
  device_id: string
  actor_id: string
  /** The last event that this phone has: only later ones come back. */
  after_id?: string
  events: S.EventGiven[]
}

export const reportEvents = (id: string, body: Batch) =>
  answerTo(http.POST('/api/v1/cases/{case_id}/events', { ...ofCase(id), body }), TREATMENT)

// --- record ---

export const getRecord = (id: string) =>
  answerTo(http.GET('/api/v1/cases/{case_id}/record', ofCase(id)), { record: 'object' })

// --- sign-offs of supervisors ---

export const signOffOnSite = (id: string, body: S.OnSiteSignOff) =>
  answerTo(http.POST('/api/v1/cases/{case_id}/on-site-sign-offs', { ...ofCase(id), body }), TREATMENT)

export const getOneTimeCode = () => answerTo(http.GET('/api/v1/one-time-code'), { state: 'string' })

export const makeOneTimeCode = (password: string) =>
  answerTo(http.POST('/api/v1/one-time-code', { body: { password } }), { secret: 'string' })

export const confirmOneTimeCode = (code: string) =>
  answerTo(http.POST('/api/v1/one-time-code/confirm', { body: { code } }), { state: 'string' })

export const removeOneTimeCode = () => done(http.DELETE('/api/v1/one-time-code'))

// --- joining a programme ---

export const lookAtLink = (invitation: string) =>
  answerTo(http.POST('/api/v1/join/link', { body: { invitation } }), { programme: 'object' })

export const joinAnew = (body: S.NewAccount) =>
  answerTo(http.POST('/api/v1/join/new-account', { body }), { person: 'object' })

export const join = (invitation: string) =>
  answerTo(http.POST('/api/v1/join', { body: { invitation } }), { person: 'object' })

// --- revoked and released ---

export const revoke = (version_id: string, hash: string, body: { id: string; reason: string }) =>
  answerTo(
    http.POST('/api/v1/plan-versions/{version_id}/revoke', {
      params: { path: { version_id }, header: { 'If-Match': tag(hash) } },
      body,
    }),
    VERSION,
  )

export const release = (version_id: string, hash: string, canals: string[]) =>
  answerTo(
    http.POST('/api/v1/plan-versions/{version_id}/release', {
      params: { path: { version_id }, header: { 'If-Match': tag(hash) } },
      body: { canals },
    }),
    VERSION,
  )

export const getPushKey = () => answerTo(http.GET('/api/v1/push-key'), { key: 'string' })

export const putSubscription = (body: S.PushSubscriptionGiven) => done(http.PUT('/api/v1/push-subscription', { body }))

export const removeSubscription = (endpoint: string) =>
  done(http.DELETE('/api/v1/push-subscription', { params: { query: { endpoint } } }))

const SESSION = { person: 'object', memberships: 'list' } as const

/** Undefined where nobody is signed in. */
export const getSession = () => answerUnlessOut(http.GET('/api/v1/session'), SESSION)

export async function signIn(username: string, password: string) {
  // Asking who is signed in sets the token's cookie, whatever the answer; a phone that lost it gets it so.
  if (!csrfToken()) await http.GET('/api/v1/session')
  return answerTo(http.POST('/api/v1/session', { body: { username, password } }), SESSION)
}

export const signOut = () => done(http.DELETE('/api/v1/session'))
