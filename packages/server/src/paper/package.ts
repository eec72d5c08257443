import { ZipWriter } from '../zip-writer.ts'

/** Parts by their path as one zip: what a 3MF file is. The same parts give the same bytes. */
export function packed(parts: ReadonlyMap<string, string>): Uint8Array {
  const zip = new ZipWriter()
  const pieces = [...parts].map(([path, text]) => zip.add(path, Buffer.from(text, 'utf8'), true))
  return new Uint8Array(Buffer.concat([...pieces, zip.end()]))
}
