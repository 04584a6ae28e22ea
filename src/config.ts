import { existsSync } from 'node:fs'
import { isIP } from 'node:net'
import { z } from 'zod'

const logLevels = ['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent'] as const

/** An address, a network such as 10.0.0.0/8, or the name for this machine's own. */
function isNetwork(text: string): boolean {
  const [address = '', bits, ...more] = text.trim().split('/')
  if (text.trim() === 'loopback') return true
  const version = isIP(address)
  if (version === 0 || more.length > 0) return false
  return bits === undefined || (/^\d{1,3}$/.test(bits) && Number(bits) <= (version === 4 ? 32 : 128))
}

/** Settings of the environment: what each is for, what is allowed, and the sentence for a wrong one. */
const settings = z.object({
  PORT: z
    .string()
    .default('3000')
    .refine((text) => /^\d+$/.test(text) && Number(text) <= 65_535, 'must be a whole number from 0 to 65535')
    .transform(Number),
  HOST: z.string().min(1, 'must name an address to listen on').default('127.0.0.1'),
  DATABASE_URL: z
    .string()
    .default('file:./data/cyclewright.db')
    .refine(
      (text) => /^(file:.|postgres(ql)?:\/\/.)/.test(text),
      'must begin with file: and name a file, or with postgresql:// and name a database',
    ),
  COPY_BEFORE_MIGRATION: z
    .enum(['0', '1'], 'must be 1 (copy a PostgreSQL database before its tables change) or 0')
    .default('1'),
  TLS_CERT: z.string().refine(existsSync, 'names no file').optional(),
  TLS_KEY: z.string().refine(existsSync, 'names no file').optional(),
  TRUST_PROXY: z
    .string()
    .refine((text) => text.split(',').every(isNetwork), 'must be addresses of proxies with commas between, or loopback')
    .transform((text) => text.split(',').map((each) => each.trim()))
    .optional(),
  LOG_LEVEL: z.enum(logLevels, `must be one of ${logLevels.join(', ')}`).default('warn'),
  BACKUP_HOURS: z
    .string()
    .default('1')
    .refine((text) => /^\d{1,3}$/.test(text), 'must be a whole number of hours up to 999 (0: no copies by itself)')
    .transform(Number),
  METRICS_TOKEN: z
    .string()
    .refine((text) => /^[\x21-\x7e]{20,200}$/.test(text), 'must have 20 to 200 letters, figures or signs')
    .optional(),
  DEMO: z.enum(['0', '1'], 'must be 1 (put the demo season into an empty database) or 0').default('1'),
})

export interface Config {
  port: number
  host: string
  databaseUrl: string
  copyBefore: boolean
  /** Paths of the certificate and its key, both or neither. */
  tls: { certificate: string; key: string } | null
  /** Proxies that are believed about whom they forward. */
  trustProxy: string[] | null
  logLevel: (typeof logLevels)[number]
  demo: boolean
  /** Who brings it may read `/metrics` from elsewhere; null: only this machine may. */
  metricsToken: string | null
  /** Hours between copies of the database; 0: none by itself. */
  backupHours: number
}

/** A setting is wrong; the message is for the person who starts the server. */
export class ConfigError extends Error {
  constructor(message: string) {
    super(message)
    this.name = 'ConfigError'
  }
}

/** The settings of an environment. An empty one counts as not set. Throws a ConfigError with a sentence per wrong setting. */
export function readConfig(environment: { [name: string]: string | undefined }): Config {
  const given = Object.fromEntries(Object.entries(environment).filter(([, value]) => value !== ''))
  const { success, data, error } = settings.safeParse(given)
  if (!success) throw new ConfigError(error.issues.map((issue) => sentence(issue, given)).join('\n'))
  return {
    port: data.PORT,
    host: data.HOST,
    databaseUrl: data.DATABASE_URL,
    copyBefore: data.COPY_BEFORE_MIGRATION === '1',
    tls: tlsOf(data.TLS_CERT, data.TLS_KEY),
    trustProxy: data.TRUST_PROXY ?? null,
    logLevel: data.LOG_LEVEL,
    demo: data.DEMO === '1',
    metricsToken: data.METRICS_TOKEN ?? null,
    backupHours: data.BACKUP_HOURS,
  }
}

function tlsOf(certificate: string | undefined, key: string | undefined): Config['tls'] {
  if (certificate === undefined && key === undefined) return null
  if (certificate === undefined) throw new ConfigError('TLS_KEY is set without TLS_CERT; https needs both.')
  if (key === undefined) throw new ConfigError('TLS_CERT is set without TLS_KEY; https needs both.')
  return { certificate, key }
}

function sentence(issue: z.core.$ZodIssue, given: { [name: string]: string | undefined }): string {
  const name = String(issue.path[0])
  // A database address may hold a password, so only its scheme is repeated.
  const value =
    name === 'DATABASE_URL' ? given[name]?.replace(/:.*/s, ':…') : name === 'METRICS_TOKEN' ? '…' : given[name]
  return `${name} ${issue.message}, got ${JSON.stringify(value)}.`
}
