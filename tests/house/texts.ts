import { parseSync } from 'vite'

/** A text for people in the source of a screen, instead of in the catalogue. */
export interface Stray {
  line: number
  text: string
}

interface Node {
  type: string
  start: number
  [key: string]: unknown
}

/** Attributes that people read or hear. */
const read = new Set(
  'label title alt placeholder description help what caption summary noun head heading none add error loading text aria-label aria-description aria-valuetext aria-roledescription'.split(
    ' ',
  ),
)

/** Attributes and fields that hold several words for the machine. */
const technical = new Set(
  'className style d viewBox transform points rel sizes media accept key xmlns background border hover color preserveAspectRatio fontFamily'.split(
    ' ',
  ),
)

/** Without texts of their own. */
const silent = new Set([
  'ImportDeclaration',
  'ExportAllDeclaration',
  'TSTypeAliasDeclaration',
  'TSInterfaceDeclaration',
])

const letters = /\p{L}{2,}/u
const sentence = /\p{L}{2,}[,.:;!?’']? +\p{L}/u

/** Where a string stands: what is shown must hold no letters, code no sentence. */
type Place = 'shown' | 'code'

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string'

const nodes = (value: unknown): Node[] => (Array.isArray(value) ? value : [value]).filter(isNode)

const nameOf = (node: Node): string => {
  const [key] = nodes(node['name'] ?? node['key'])
  return String(key?.['name'] ?? key?.['value'] ?? '')
}

const quasis = (node: Node): string =>
  (node['quasis'] as { value: { cooked: string } }[]).map(({ value }) => value.cooked).join(' … ')

/** What a node says itself; null where it is no text. */
function textOf(node: Node): string | null {
  if (node.type === 'JSXText') return String(node['value'])
  if (node.type === 'Literal' && typeof node['value'] === 'string') return node['value']
  return node.type === 'TemplateLiteral' ? quasis(node) : null
}

/** The parts of a node, with where what they say stands. */
function partsOf(node: Node, place: Place): [Node, Place][] {
  const as = (of: unknown, where: Place) => nodes(of).map((part): [Node, Place] => [part, where])
  switch (node.type) {
    case 'JSXAttribute':
      return technical.has(nameOf(node)) ? [] : as(node['value'], read.has(nameOf(node)) ? 'shown' : 'code')
    case 'Property':
      return technical.has(nameOf(node)) ? [] : as(node['value'], 'code')
    case 'JSXElement':
    case 'JSXFragment':
      return [...as(node['openingElement'], 'code'), ...as(node['children'], 'shown')]
    case 'JSXExpressionContainer':
      return as(node['expression'], place)
    case 'ConditionalExpression':
      return [...as(node['test'], 'code'), ...as(node['consequent'], place), ...as(node['alternate'], place)]
    case 'LogicalExpression':
      return [...as(node['left'], node['operator'] === '&&' ? 'code' : place), ...as(node['right'], place)]
    default:
      return Object.values(node).flatMap((value) => as(value, 'code'))
  }
}

/**
 * The texts for people in a source: what stands between tags, in attributes that are read, in what an element shows, and
 * every string that looks like a sentence.
 */
export function strayTexts(path: string, source: string): Stray[] {
  const { program, errors } = parseSync(path, source)
  if (errors.length > 0) throw new Error(`${path} can not be parsed: ${errors[0]?.message}`)
  const search = (node: Node, place: Place): Stray[] => {
    if (silent.has(node.type) || node.type.startsWith('TSType')) return []
    const text = textOf(node)
    const stray = text !== null && (place === 'code' && node.type !== 'JSXText' ? sentence : letters).test(text)
    const line = source.slice(0, node.start).split('\n').length
    const inside = partsOf(node, place).flatMap(([part, where]) => search(part, where))
    return stray ? [{ line, text: text.trim().replace(/\s+/g, ' ') }, ...inside] : inside
  }
  return search(program as unknown as Node, 'code')
}
