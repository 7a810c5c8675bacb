// Prints for each page what Lighthouse makes of it on a slow phone, as one line of JSON: `node scores.mjs PORT URL...`
// in the browser that listens at the port, as whoever is signed in there.
import lighthouse from 'lighthouse'

const [port, ...urls] = process.argv.slice(2)
const onlyCategories = ['performance', 'accessibility', 'best-practices']

for (const url of urls) {
  const { lhr } = await lighthouse(url, { port: Number(port), logLevel: 'error', onlyCategories })
  const scores = Object.fromEntries(onlyCategories.map((key) => [key, Math.round(lhr.categories[key].score * 100)]))
  const shift = lhr.audits['cumulative-layout-shift'].numericValue
  const judged = onlyCategories.slice(1).flatMap((key) => lhr.categories[key].auditRefs)
  const faults = judged
    .filter(({ id, weight }) => weight > 0 && lhr.audits[id].score !== null && lhr.audits[id].score < 1)
    .map(({ id }) => [
      lhr.audits[id].title,
      (lhr.audits[id].details?.items ?? []).map((item) => item.node?.snippet ?? item.description ?? item.url ?? ''),
    ])
  process.stdout.write(`${JSON.stringify({ url, shown: lhr.finalDisplayedUrl, error: lhr.runtimeError, scores, shift, faults })}\n`)
}
