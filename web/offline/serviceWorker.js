// Lets a page be opened without a connection: the stopwatch's, and in a worker of their own the stands. The build puts in which
// page, the list of its files and their mark; nothing of the server's answers is ever kept here: documents and records are kept
// by the page itself, in a storage that no worker touches.
const mark = '__MARK__'
const files = __FILES__
const shell = '__SHELL__'
const page = __PAGE__
/** After this long (ms) without an answer the kept page is shown: a weak connection is worse than none. */
const patience = 5000

// Each worker clears away what it kept itself.
const own = '__OWN__/'
const name = `${own}${mark}`

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
      .then((names) => names.filter((each) => each.startsWith(own) && each !== name).slice(0, -1))
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
