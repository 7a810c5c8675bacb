/** A file of the app and the digest of its bytes, as the build has them (SHA-256 in hex). */
export type AppFile = readonly [path: string, sha256: string]

/**
 * Puts the files in the cache, all of them or none: an app of which one file is the sign-in page of a guest network, or
 * from another version, would stay broken with no connection. Raises where an answer is another one.
 */
export async function keepWhole(
  cache: Pick<Cache, 'put'>,
  files: readonly AppFile[],
  ask: (file: Request) => Promise<Response>,
): Promise<void> {
  const answers = await Promise.all(files.map((file) => asBuilt(file, ask)))
  await Promise.all(answers.map(([path, answer]) => cache.put(path, answer)))
}

async function asBuilt(
  [path, sha256]: AppFile,
  ask: (file: Request) => Promise<Response>,
): Promise<readonly [string, Response]> {
  const answer = await ask(new Request(new URL(path, location.href), { cache: 'reload', redirect: 'error' }))
  const digest = await crypto.subtle.digest('SHA-256', await answer.clone().arrayBuffer())
  const hex = [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
  if (!answer.ok || hex !== sha256) throw new TypeError(`not as it was built: ${path}`)
  return [path, answer]
}
