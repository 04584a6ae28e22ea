import helmet from '@fastify/helmet'
import type { FastifyInstance } from 'fastify'

/** Everything that a page loads comes from this server. Styles are also set by widgets at run time. */
export async function protect(app: FastifyInstance): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        baseUri: ["'self'"],
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
    strictTransportSecurity: false,
  })
}
