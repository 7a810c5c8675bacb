/** A file of the app and the digest of its bytes, as the build has them (SHA-256 in hex). */
export type AppFile = readonly [path: string, sha256: string]

type Ask = (path: string, how: RequestInit) => Promise<Response>

/**
 * Puts the files in the cache, all of them or none: an app of which one file is the sign-in page of a guest network, or
 * from another version, would stay broken with no connection. Raises where an answer is another one.
 */
export async function keepWhole(cache: Pick<Cache, 'put'>, files: readonly AppFile[], ask: Ask): Promise<void> {
  const answers = await Promise.all(files.map((file) => asBuilt(file, ask)))
  await Promise.all(answers.map(([path, answer]) => cache.put(path, answer)))
}

async function asBuilt(file: AppFile, ask: Ask): Promise<readonly [string, Response]> {
  const [path] = file
  // What the page fetched a moment ago comes from the browser's own copies; the digest says whether they are right.
  const answer = (await asked(file, ask, ofItsName(path))) ?? (await asked(file, ask, 'reload'))
  if (!answer) throw new TypeError(`not as it was built: ${path}`)
  return [path, answer]
}

/** A name with a digest in it never means other bytes; of any other the server is asked whether it is still the same. */
const ofItsName = (path: string): RequestCache => (path.startsWith('/assets/') ? 'default' : 'no-cache')

/** The file, where the answer is the one that was built. */
async function asked([path, sha256]: AppFile, ask: Ask, cache: RequestCache): Promise<Response | undefined> {
  const answer = await ask(path, { cache, redirect: 'error' })
  const digest = await crypto.subtle.digest('SHA-256', await answer.clone().arrayBuffer())
  const hex = [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
  return answer.ok && hex === sha256 ? answer : undefined
}
