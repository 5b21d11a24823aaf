/* Keeps every file of the page in the browser. The edition is made from their bytes: another edition, another store. */
const store = `borewright-${'%EDITION%'}`
const files = ['%FILES%']

addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(store)
      .then((kept) => kept.addAll(files))
      .then(() => self.skipWaiting()),
  )
})
addEventListener('activate', (event) => {
  const clear = async () => {
    for (const name of await caches.keys())
      if (name.startsWith('borewright-') && name !== store) await caches.delete(name)
    await self.clients.claim()
  }
  event.waitUntil(clear())
})
// The page itself is asked for anew where there is a line, so that a new edition is seen at once; what it names never changes.
addEventListener('fetch', (event) => {
  const { request } = event
  if (request.method !== 'GET' || new URL(request.url).origin !== location.origin) return
  const held = () => caches.open(store).then((kept) => kept.match(request, { ignoreSearch: true }))
  event.respondWith(
    request.mode === 'navigate'
      ? fetch(request).catch(async () => (await held()) ?? (await caches.open(store)).match('index.html'))
      : held().then((found) => found ?? fetch(request)),
  )
})
