/**
 * Keeps the app's own files, so that it opens without the server: on loopback and over https, where browsers allow
 * it. What is asked of the server itself (/api) is never answered from here: the app keeps its own copy of the
 * documents, and knows what is old.
 */
declare const CASTWRIGHT_FILES: readonly string[]
const worker = globalThis as unknown as ServiceWorkerGlobalScope

const PREFIX = 'castwright-'
// Names carry the hash of what is in them, so a changed list is a changed app.
const KEEP = `${PREFIX}${hash(CASTWRIGHT_FILES.join('\n'))}`

function hash(text: string): string {
  let h = 0x811c9dc5
  for (let k = 0; k < text.length; k++) h = Math.imul(h ^ text.charCodeAt(k), 0x01000193)
  return (h >>> 0).toString(16)
}

worker.addEventListener('install', event => {
  const paths = CASTWRIGHT_FILES.map(f => (f === 'index.html' ? '/' : `/${f}`))
  event.waitUntil(
    caches
      .open(KEEP)
      .then(keep => keep.addAll(paths.map(p => new Request(p, { cache: 'reload' }))))
      .then(() => worker.skipWaiting())
  )
})

worker.addEventListener('activate', event => {
  event.waitUntil(
    caches
      .keys()
      .then(names =>
        Promise.all(names.filter(n => n.startsWith(PREFIX) && n !== KEEP).map(n => caches.delete(n)))
      )
      .then(() => worker.clients.claim())
  )
})

worker.addEventListener('fetch', event => {
  const { request } = event
  const url = new URL(request.url)
  if (request.method !== 'GET' || url.origin !== worker.location.origin || url.pathname.startsWith('/api/'))
    return
  if (request.mode === 'navigate') {
    // The newest app when the server is there; the kept one when it is not.
    event.respondWith(fetch(request).catch(() => kept('/')))
    return
  }
  event.respondWith(caches.match(request).then(found => found ?? fetch(request)))
})

async function kept(path: string): Promise<Response> {
  return (await caches.match(path)) ?? Response.error()
}
