// Keeps the dock sheets on the phone, so that they open where there is no network. What is entered is kept by the sheets themselves; this keeps only
// the page and its files. The page is put away last, so that it never names a file that is not here.
const shelf = 'oakum-dock-1'
const file = /(?:\/assets\/|["'(]\.\/)([\w.-]+\.(?:js|css|woff2|svg))/g

self.addEventListener('install', (event) => event.waitUntil(fill().then(() => self.skipWaiting())))

self.addEventListener('activate', (event) =>
  event.waitUntil(
    caches.keys().then((names) => Promise.all(names.filter((n) => n.startsWith('oakum-dock-') && n !== shelf).map((n) => caches.delete(n)))).then(() => self.clients.claim()),
  ),
)

self.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url)
  if (event.request.method !== 'GET' || url.origin !== self.location.origin) return
  if (url.pathname === '/dock') event.respondWith(url.searchParams.has('code') ? byNetwork(event.request) : page(event))
  else if (url.pathname.startsWith('/assets/') || url.pathname === '/mark.svg' || url.pathname === '/dock.webmanifest') event.respondWith(kept(event.request))
})

async function page(event) {
  const have = await caches.match('/dock')
  if (!have) return fetch(event.request)
  event.waitUntil(fill().catch(() => undefined)) // no network: what is here stays
  return have
}

// A scanned code must reach the program; without a network the page opens all the same.
async function byNetwork(request) {
  try {
    return await fetch(request)
  } catch (err) {
    const have = await caches.match('/dock')
    if (have) return have
    throw err
  }
}

async function kept(request) {
  return (await caches.match(request)) ?? fetch(request)
}

async function fill() {
  const cache = await caches.open(shelf)
  const fresh = await fetch('/dock', { cache: 'no-cache', credentials: 'same-origin' })
  if (!fresh.ok) throw new Error(`the dock sheets answer with ${fresh.status}`)
  await gather(cache, await fresh.clone().text(), new Set())
  for (const extra of ['/mark.svg', '/dock.webmanifest']) if (!(await cache.match(extra))) await cache.add(extra)
  await cache.put('/dock', fresh)
}

/** Puts away every file that a text names, and every file that those name. */
async function gather(cache, text, seen) {
  for (const [, name] of text.matchAll(file)) {
    const address = `/assets/${name}`
    if (seen.has(address)) continue
    seen.add(address)
    let have = await cache.match(address)
    if (!have) {
      have = await fetch(address, { credentials: 'same-origin' })
      if (!have.ok) continue // a word that only looks like a file
      await cache.put(address, have.clone())
    }
    if (/\.(js|css)$/.test(name)) await gather(cache, await have.text(), seen)
  }
}
