import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { projectRoot } from '../../src/root.ts'

export interface SourceFile {
  /** From the project's folder, with forward slashes. */
  path: string
  text: string
  /** What it imports: a package's name, or a path from the project's folder. */
  imports: string[]
  /** Those of them that stay when the types are gone. */
  loads: string[]
}

/** The script files below the folders, or the files themselves, without what a tool generated. */
export function sources(...places: string[]): SourceFile[] {
  return places.flatMap(scriptsIn).map((path) => {
    const text = readFileSync(join(projectRoot(), path), 'utf8')
    const fromRoot = (name: string) => (name.startsWith('.') ? join(dirname(path), name) : name)
    return { path, text, imports: importsOf(text).map(fromRoot), loads: importsOf(withoutTypes(text)).map(fromRoot) }
  })
}

function scriptsIn(place: string): string[] {
  if (/\.[a-z]+$/.test(place)) return [place]
  return readdirSync(join(projectRoot(), place), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|tsx|js)$/.test(name))
    .map((name) => join(place, name))
    .filter((path) => !/^src\/store\/(postgresql\/)?generated/.test(path))
}

/** Static, re-exporting, dynamic and bare imports, and the URLs of workers. */
export function importsOf(text: string): string[] {
  const forms = [
    /\b(?:import|export)\b[^'"`;]*?\bfrom\s*['"]([^'"]+)['"]/g,
    /\bimport\s*\(?\s*['"]([^'"]+)['"]/g,
    /\bnew URL\(\s*['"](\.[^'"]+)['"]/g,
  ]
  return forms.flatMap((form) => [...text.matchAll(form)].map((match) => match[1]!))
}

const withoutTypes = (text: string) => text.replace(/\b(import|export) type\b[^'"]*['"][^'"]*['"]/g, '')

/** The code alone, so that a word in a comment or in a sentence for the user is not taken for a call. */
export function withoutProse(text: string): string {
  return text
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/'(?:[^'\\\n]|\\.)*'/g, "''")
    .replace(/(^|\s)\/\/.*$/gm, '')
}
