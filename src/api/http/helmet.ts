import helmet from '@fastify/helmet'
import type { FastifyInstance } from 'fastify'
import { isSecure } from './door.ts'
import { isHere } from './onlyHere.ts'

/** A year (s): OWASP ASVS 5.0, 3.4.1. Other names below this one are not ours to decide over. */
const onlyHttps = 'max-age=31536000'

/** What pages may ask a device for: the camera reads codes, and a phone in the stands stays awake. Nothing else, and nobody else. */
const permissions = [
  'camera=(self)',
  'screen-wake-lock=(self)',
  'accelerometer=()',
  'bluetooth=()',
  'display-capture=()',
  'geolocation=()',
  'gyroscope=()',
  'hid=()',
  'magnetometer=()',
  'microphone=()',
  'midi=()',
  'payment=()',
  'serial=()',
  'usb=()',
].join(', ')

const ofData = /^\/(api|trpc|health|ready|metrics)(\/|\?|$)/

/** Everything that a page loads comes from this server. Styles are also set by widgets at run time. */
export async function protect(app: FastifyInstance): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        baseUri: ["'none'"],
        connectSrc: ["'self'"],
        fontSrc: ["'self'", 'data:'],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        objectSrc: ["'none'"],
        // Compiling WebAssembly (the plan's inner loops) is allowed, evaluating text as script is not.
        scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
        styleSrc: ["'self'", "'unsafe-inline'"],
        workerSrc: ["'self'", 'blob:'],
        // Over plain HTTP in a team's own network an upgrade would end in nothing.
        upgradeInsecureRequests: null,
      },
    },
    // Said to who came by https only, below.
    strictTransportSecurity: false,
    referrerPolicy: { policy: 'no-referrer' },
    xFrameOptions: { action: 'deny' },
  })
  app.addHook('onRequest', async (request, reply) => {
    reply.header('Permissions-Policy', permissions)
    // A browser that once believed it of this very machine would refuse every other program here.
    if (isSecure(request) && !isHere(request)) reply.header('Strict-Transport-Security', onlyHttps)
    // No browser and no proxy keeps an answer; what may be kept says so itself.
    if (ofData.test(request.url)) reply.header('Cache-Control', 'no-store')
  })
}
