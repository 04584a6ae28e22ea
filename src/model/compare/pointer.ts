import { refusal } from '../documents/sentences.ts'

const arrayIndex = /^(0|[1-9]\d*)$/

/**
 * The reference tokens of a JSON Pointer (RFC 6901, sections 3 and 4): `/a~1b/0` is `['a/b', '0']`.
 * Throws ModelError 'invalid' for a pointer that does not begin with `/` or holds a `~` not followed by 0 or 1.
 */
export function pointerTokens(pointer: string): string[] {
  if (!pointer.startsWith('/')) {
    throw refusal('invalid', ['pathStart', { pointer }])
  }
  if (/~(?![01])/.test(pointer)) {
    throw refusal('invalid', ['pathTilde', { pointer }])
  }
  return pointer
    .slice(1)
    .split('/')
    .map((token) => token.replaceAll('~1', '/').replaceAll('~0', '~'))
}

function child(parent: unknown, token: string, pointer: string): unknown {
  if (Array.isArray(parent)) {
    if (arrayIndex.test(token) && Number(token) < parent.length) return parent[Number(token)]
  } else if (typeof parent === 'object' && parent !== null && Object.hasOwn(parent, token)) {
    return (parent as Record<string, unknown>)[token]
  }
  throw refusal('invalid', ['pathNowhere', { pointer, token }])
}

/**
 * The document with what the pointer names replaced by `change` of it, and the new value.
 * Only the objects along the path are copied; all others stay the same objects, so that caches keyed by them stay valid.
 * Throws ModelError 'invalid' where the pointer leads nowhere.
 */
export function changeAt<T>(document: T, pointer: string, change: (found: unknown, tokens: string[]) => unknown): T {
  const tokens = pointerTokens(pointer)
  const descend = (parent: unknown, depth: number): unknown => {
    if (depth === tokens.length) return change(parent, tokens)
    const token = tokens[depth] as string
    const before = child(parent, token, pointer)
    const after = descend(before, depth + 1)
    if (after === before) return parent
    if (!Array.isArray(parent)) return { ...(parent as object), [token]: after }
    const copy = parent.slice()
    copy[Number(token)] = after
    return copy
  }
  return descend(document, 0) as T
}
