import { Notice, Skeleton } from '@/parts/notice'
import { Page } from '@/parts/page'
import { match } from '@/router'
import { SignIn } from '@/screens/sign-in/sign-in'
import { words } from '@/words/en'
import { type Later, later } from './later'

const cases = later(() => import('./groups/cases'))
const tooth = later(() => import('./groups/tooth'))
export const chair = later(() => import('./groups/chair'))
export const images = later(() => import('./groups/images'))
export const supervision = later(() => import('./groups/supervision'))
const record = later(() => import('./groups/record'))
// What these show is the server's alone: the worker does not keep them ahead (`vite.config.ts`).
const practice = later(() => import('./groups/practice'))
const programs = later(() => import('./groups/programs'))
const people = later(() => import('./groups/people'))
const ONLINE: readonly Later<unknown>[] = [practice, programs, people]

type Parts = Record<string, string>

interface Screen {
  show(parts: Parts): preact.JSX.Element
  load(): void
}

const SCREENS: readonly (readonly [string, Screen])[] = [
  ['/cases', of(cases, ({ Cases }) => <Cases />)],
  ['/cases/new', of(tooth, ({ NewCase }) => <NewCase />)],
  ['/cases/:id', of(tooth, ({ Case }, { id = '' }) => <Case id={id} key={id} />)],
  ['/cases/:id/plan', of(tooth, ({ Case }, { id = '' }) => <Case id={id} planned key={id} />)],
  ['/cases/:id/chair', of(chair, ({ Chair }, { id = '' }) => <Chair id={id} key={id} />)],
  ['/cases/:id/record', of(record, ({ Record }, { id = '' }) => <Record id={id} key={id} />)],
  ['/cases/:id/chair/close', of(chair, ({ CloseVisit }, { id = '' }) => <CloseVisit id={id} key={id} />)],
  ['/cases/:id/chair/reopen', of(chair, ({ ReopenVisit }, { id = '' }) => <ReopenVisit id={id} key={id} />)],
  [
    '/cases/:id/sign-off/:canal',
    of(chair, ({ HoldPointPage }, { id = '', canal = '' }) => (
      <HoldPointPage caseId={id} canal={canal} key={`${id} ${canal}`} />
    )),
  ],
  [
    '/cases/:id/canals/:canal',
    of(tooth, ({ Case }, { id = '', canal = '' }) => <Case id={id} canalId={canal} key={id} />),
  ],
  ['/cases/:id/images', of(images, ({ Compare }, { id = '' }) => <Compare caseId={id} key={id} />)],
  [
    '/cases/:id/images/:image',
    of(images, ({ MarksScreen }, { id = '', image = '' }) => <MarksScreen caseId={id} imageId={image} key={image} />),
  ],
  ['/worklist', of(supervision, ({ Worklist }) => <Worklist />)],
  ['/plans/:id', of(tooth, ({ Review }, { id = '' }) => <Review id={id} key={id} />)],
  ['/share', of(images, ({ Share }) => <Share />)],
  ['/practice', of(practice, ({ Practice }) => <Practice />)],
  ['/practice/:id', of(practice, ({ Exercise }, { id = '' }) => <Exercise id={id} key={id} />)],
  ['/account', of(record, ({ Account }) => <Account />)],
  ['/account/keys', of(programs, ({ Keys }) => <Keys />)],
  ['/account/people', of(people, ({ People }) => <People />)],
  ['/join', of(people, ({ Join }) => <Join signIn={(above) => <SignIn above={above} />} />)],
  ['/account/systems', of(programs, ({ Systems }) => <Systems />)],
]

/** What says that this phone cannot show the work of a case. */
export const noWork = (caseId: string | undefined) => of(chair, ({ NoWork }) => <NoWork caseId={caseId} />).show({})

/** The screen at an address of the app. */
export function screenAt(path: string): preact.JSX.Element {
  const [screen, parts] = find(path)
  if (screen) return screen.show(parts)
  return (
    <Page title={words.notFound.title}>
      <p>{words.notFound.says}</p>
      <a class="button" href="/">
        {words.notFound.home}
      </a>
    </Page>
  )
}

/** Begins to load what shows an address, before it is known whose screen it is. */
export function loadAhead(path: string): void {
  find(path)[0]?.load()
}

function find(path: string): [Screen | undefined, Parts] {
  for (const [pattern, screen] of SCREENS) {
    const parts = match(pattern, path)
    if (parts) return [screen, parts]
  }
  return [undefined, {}]
}

function of<M>(group: Later<M>, show: (screens: M, parts: Parts) => preact.JSX.Element): Screen {
  return {
    load: group.load,
    show(parts) {
      const screens = group.get()
      return screens ? show(screens, parts) : <NotHereYet group={group} />
    },
  }
}

function NotHereYet({ group }: { group: Later<unknown> }) {
  return (
    <Page title={words.product}>
      {group.failed() ? (
        <Notice sign="caution" action={{ says: words.tryAgain, onDo: group.load }}>
          {ONLINE.includes(group) ? words.phone.needsServer : words.phone.notHereYet}
        </Notice>
      ) : (
        <Skeleton rows={4} says={words.loading} />
      )}
    </Page>
  )
}
