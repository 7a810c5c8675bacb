import { http, told } from './client'
import type * as S from './shapes'

const ofProgramme = (programme_id: string) => ({ params: { path: { programme_id } } })
const ofCase = (case_id: string) => ({ params: { path: { case_id } } })
const ofCanal = (canal_id: string) => ({ params: { path: { canal_id } } })
const ofVersion = (version_id: string) => ({ params: { path: { version_id } } })
/** An entity tag as a header carries it (RFC 9110, 8.8.3). */
const tag = (value: string | number) => `"${value}"`

// --- cases ---

export const listCases = (programme_id: string, cursor?: string) =>
  told(
    http.GET('/api/v1/programmes/{programme_id}/cases', {
      params: { path: { programme_id }, query: cursor === undefined ? {} : { cursor } },
    }),
  )

export const openCase = (programme: string, body: S.NewCase) =>
  told(http.POST('/api/v1/programmes/{programme_id}/cases', { ...ofProgramme(programme), body }))

export const getCase = (id: string) => told(http.GET('/api/v1/cases/{case_id}', ofCase(id)))

export const changeCase = (case_id: string, revision: number, body: S.CaseChanges) =>
  told(
    http.PATCH('/api/v1/cases/{case_id}', {
      params: { path: { case_id }, header: { 'If-Match': tag(revision) } },
      body,
    }),
  )

export const letPass = (id: string, body: S.NewOverride) =>
  told(http.POST('/api/v1/cases/{case_id}/overrides', { ...ofCase(id), body }))

export const takeBack = (override_id: string) =>
  told(http.POST('/api/v1/overrides/{override_id}/withdraw', { params: { path: { override_id } } }))

// --- canals ---

export const addCanal = (id: string, body: S.NewCanal) =>
  told(http.POST('/api/v1/cases/{case_id}/canals', { ...ofCase(id), body }))

export const changeCanal = (id: string, body: S.CanalFacts) =>
  told(http.PATCH('/api/v1/canals/{canal_id}', { ...ofCanal(id), body }))

export const removeCanal = (id: string) => told(http.DELETE('/api/v1/canals/{canal_id}', ofCanal(id)))

export const changeRoot = (case_id: string, name: string, body: Omit<S.RootShown, 'name'>) =>
  told(http.PUT('/api/v1/cases/{case_id}/roots/{name}', { params: { path: { case_id, name } }, body }))

export const addReading = (canal: string, body: { id: string; reading: S.Reading }) =>
  told(http.POST('/api/v1/canals/{canal_id}/readings', { ...ofCanal(canal), body }))

export const addJunction = (canal: string, body: { id: string; junction: S.Junction }) =>
  told(http.POST('/api/v1/canals/{canal_id}/junctions', { ...ofCanal(canal), body }))

// --- teeth, kits, techniques ---

export const findTooth = (body: S.ToothName) => told(http.POST('/api/v1/compute/tooth', { body }))

export const getTooth = (iso: string) => told(http.GET('/api/v1/teeth/{iso}', { params: { path: { iso } } }))

export const listFactors = () => told(http.GET('/api/v1/difficulty-factors'))

export const getProgramme = (id: string) => told(http.GET('/api/v1/programmes/{programme_id}', ofProgramme(id)))

export const listKits = (programme: string) =>
  told(http.GET('/api/v1/programmes/{programme_id}/kits', ofProgramme(programme)))

export const listTechniques = (programme: string) =>
  told(http.GET('/api/v1/programmes/{programme_id}/techniques', ofProgramme(programme)))

// --- plans ---

export const previewPlan = (id: string, body: S.Asked) =>
  told(http.POST('/api/v1/cases/{case_id}/preview', { ...ofCase(id), body }))

export const listVersions = (id: string) => told(http.GET('/api/v1/cases/{case_id}/plan-versions', ofCase(id)))

export const proposePlan = (id: string, body: S.Asked & { id: string }) =>
  told(http.POST('/api/v1/cases/{case_id}/plan-versions', { ...ofCase(id), body }))

export const getVersion = (id: string) => told(http.GET('/api/v1/plan-versions/{version_id}', ofVersion(id)))

export const submitPlan = (id: string) => told(http.POST('/api/v1/plan-versions/{version_id}/submit', ofVersion(id)))

export const withdrawPlan = (id: string) =>
  told(http.POST('/api/v1/plan-versions/{version_id}/withdraw', ofVersion(id)))

export const getChanges = (id: string) => told(http.GET('/api/v1/plan-versions/{version_id}/changes', ofVersion(id)))

export const listWaiting = (programme: string) =>
  told(http.GET('/api/v1/programmes/{programme_id}/worklist', ofProgramme(programme)))

export const review = (version_id: string, hash: string, body: S.NewReview) =>
  told(
    http.POST('/api/v1/plan-versions/{version_id}/reviews', {
      params: { path: { version_id }, header: { 'If-Match': tag(hash) } },
      body,
    }),
  )

// --- at the chair ---

export const listRunning = (programme: string) =>
  told(http.GET('/api/v1/programmes/{programme_id}/running-work', ofProgramme(programme)))

export const getTreatment = (id: string) => told(http.GET('/api/v1/cases/{case_id}/events', ofCase(id)))

export const getBands = (id: string) => told(http.GET('/api/v1/cases/{case_id}/bands', ofCase(id)))

export const reportEvents = (id: string, body: { device: string; actor: string; events: S.EventGiven[] }) =>
  told(http.POST('/api/v1/cases/{case_id}/events', { ...ofCase(id), body }))

// --- record ---

export const getRecord = (id: string) => told(http.GET('/api/v1/cases/{case_id}/record', ofCase(id)))

// --- words of supervisors ---

export const signOffAtBench = (id: string, body: S.BenchWord) =>
  told(http.POST('/api/v1/cases/{case_id}/bench-sign-offs', { ...ofCase(id), body }))

export const getBenchCode = () => told(http.GET('/api/v1/bench-code'))

export const makeBenchCode = (password: string) => told(http.POST('/api/v1/bench-code', { body: { password } }))

export const confirmBenchCode = (code: string) => told(http.POST('/api/v1/bench-code/confirm', { body: { code } }))

export const removeBenchCode = () => told(http.DELETE('/api/v1/bench-code'))

export const release = (version_id: string, hash: string, canals: string[]) =>
  told(
    http.POST('/api/v1/plan-versions/{version_id}/release', {
      params: { path: { version_id }, header: { 'If-Match': tag(hash) } },
      body: { canals },
    }),
  )
