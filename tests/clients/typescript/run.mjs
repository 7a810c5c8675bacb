/** Runs the course as another system would: `run.mjs COURSE`, what it needs to know as JSON on standard input. */

import { readFileSync } from 'node:fs'
import { pathToFileURL } from 'node:url'

const { course } = await import(pathToFileURL(process.argv[2]).href)
try {
    console.log(JSON.stringify(await course(JSON.parse(readFileSync(0, 'utf8')))))
} catch (refusal) {
    // What is thrown is the problem itself.
    console.error(refusal instanceof Error ? refusal : refusal.detail)
    process.exitCode = 1
}
