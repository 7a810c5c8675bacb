import { noticeOf } from './notice-of'
import { type AppFile, keepWhole } from './whole'

// Written by hand: a library for it registers in a way that Trusted Types refuse, and keeps single files where here it is all or none.
// Keeps the built app so that it opens without a connection. Never touches the API: what is read and sent is the page's affair.
// Shows the server's notifications.
// Filled in by the build: the build's digest and its files.
declare const __VERSION__: string
declare const __FILES__: AppFile[]

const worker = globalThis as unknown as ServiceWorkerGlobalScope
const CACHE = `app-${__VERSION__}`
const NOT_OURS = /^\/(api|admin|lti|oauth|static)\//

worker.addEventListener('install', (event) => {
  event.waitUntil(caches.open(CACHE).then((cache) => keepWhole(cache, __FILES__, (path, how) => fetch(path, how))))
})

worker.addEventListener('activate', (event) => {
  event.waitUntil(takeOver())
})

async function takeOver(): Promise<void> {
  for (const name of await caches.keys()) if (name.startsWith('app-') && name !== CACHE) await caches.delete(name)
  await worker.clients.claim()
}

// A new version waits until the reader asks for it: nothing typed is lost to a change of the app underneath.
worker.addEventListener('message', (event) => {
  if (event.data === 'take-over') void worker.skipWaiting()
  if (event.data === 'claim') event.waitUntil(worker.clients.claim())
})

worker.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url)
  if (event.request.method === 'POST' && url.pathname === '/share') return event.respondWith(shared(event.request))
  if (event.request.method !== 'GET' || url.origin !== worker.location.origin || NOT_OURS.test(url.pathname)) return
  event.respondWith(fromHereOrThere(event.request, url.pathname))
})

/** Puts what another app shares where the page finds it, with a connection or without, and opens the page. */
async function shared(request: Request): Promise<Response> {
  const files = (await request.formData()).getAll('images').filter((file) => file instanceof File)
  const cache = await caches.open('shared')
  for (const file of files) {
    const headers = { 'Content-Type': file.type }
    await cache.put(`/shared/${crypto.randomUUID()}`, new Response(file, { headers }))
  }
  return Response.redirect('/share', 303)
}

async function fromHereOrThere(request: Request, path: string): Promise<Response> {
  const cache = await caches.open(CACHE)
  // Every address of the app is the one shell.
  const kept = await cache.match(request.mode === 'navigate' ? '/' : path)
  return kept ?? fetch(request)
}

worker.addEventListener('push', (event) => {
  event.waitUntil(notify(event.data))
})

async function notify(data: PushMessageData | null): Promise<void> {
  let message: unknown
  try {
    message = data?.json()
  } catch {
    // No JSON: told as something that waits.
  }
  const { title, body, tag, to, urgent } = noticeOf(message)
  const again = { renotify: true } // not yet in the types: a replaced notice makes itself heard
  const shown = { body, tag, data: to, icon: '/icon-192.png', requireInteraction: urgent, ...again }
  await worker.registration.showNotification(title, shown)
}

worker.addEventListener('notificationclick', (event) => {
  event.notification.close()
  event.waitUntil(open(String(event.notification.data)))
})

/** The page where the app shows it already, else a new one: no page is led away from what is typed there. */
async function open(to: string): Promise<void> {
  const pages = await worker.clients.matchAll({ type: 'window', includeUncontrolled: true })
  const there = pages.find((page) => new URL(page.url).pathname === to)
  await (there ? there.focus() : worker.clients.openWindow(to))
}
