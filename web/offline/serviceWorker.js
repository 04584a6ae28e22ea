// Lets the stopwatch's page be opened without a connection. The build puts the list of files and their mark in; nothing of
// the server's answers is ever kept here: documents are kept by the page itself.
const mark = '__MARK__'
const files = __FILES__
const shell = '/index.html'
const page = /^\/designs\/[^/]+\/stopwatch\/?$/
/** After this long (ms) without an answer the kept page is shown: a weak connection is worse than none. */
const patience = 5000

const name = `cyclewright/${mark}`

self.addEventListener('install', (event) => {
  const fresh = [shell, ...files].map((path) => new Request(path, { cache: path === shell ? 'reload' : 'default' }))
  event.waitUntil(
    caches
      .open(name)
      .then((cache) => cache.addAll(fresh))
      .then(() => self.skipWaiting()),
  )
})

self.addEventListener('activate', (event) => {
  event.waitUntil(
    caches
      .keys()
      // A page that is still open may ask for the files of the build before this one.
      .then((names) => names.filter((each) => each.startsWith('cyclewright/') && each !== name).slice(0, -1))
      .then((old) => Promise.all(old.map((each) => caches.delete(each))))
      .then(() => self.clients.claim()),
  )
})

/** The server's page wherever it answers, so that a new build is seen at once. */
async function newestPage(request) {
  const kept = caches.open(name).then((cache) => cache.match(shell))
  const late = new Promise((resolve) => {
    setTimeout(() => resolve(null), patience)
  })
  const asked = fetch(request)
  // Its failure is dealt with below, also where it comes after the patience is over.
  asked.catch(() => null)
  try {
    return (await Promise.race([asked, late])) ?? (await kept) ?? (await asked)
  } catch (error) {
    const found = await kept
    if (found) return found
    throw error
  }
}

/** Files whose names change with their contents. */
const keptFile = async (request) => (await caches.match(request, { ignoreVary: true })) ?? fetch(request)

self.addEventListener('fetch', (event) => {
  const { request } = event
  const { origin, pathname } = new URL(request.url)
  if (request.method !== 'GET' || origin !== self.location.origin) return
  if (request.mode === 'navigate') {
    if (page.test(pathname)) event.respondWith(newestPage(request))
  } else if (files.includes(pathname)) event.respondWith(keptFile(request))
})
