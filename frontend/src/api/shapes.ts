import type { components } from './generated'

// Short names of what crosses the wire; the shapes themselves are the API's.
type Schemas = components['schemas']

export type Session = Schemas['SessionShown']
export type PersonRef = Schemas['PersonRef']
export type Setting = Schemas['Setting']

export type Notation = Schemas['Notation']
export type ToothName = Schemas['ToothNameRequest']
export type Tooth = Schemas['Tooth']
export type CanalOnOffer = Schemas['CanalOnOffer']

export type CaseListed = Schemas['CaseListed']
export type CaseShown = Schemas['CaseShown']
export type NewCase = Schemas['CaseGivenRequest']
export type CaseChanges = Schemas['PatchedCaseChangesRequest']
export type CanalShown = Schemas['CanalShown']
export type NewCanal = Schemas['CanalGivenRequest']
export type CanalFacts = Schemas['PatchedCanalChangesRequest']
export type RootShown = Schemas['RootShown']
export type Pattern = Schemas['Pattern']
export type Finding = Schemas['Finding']
export type Resorption = Schemas['Resorption']
export type Reading = Schemas['ReadingGivenRequest']['reading']
export type Junction = Schemas['JunctionRequest']
export type Length = Schemas['Length']
export type Standing = Schemas['Standing']

export type Kit = Schemas['Kit'] & { id: string }
export type Needle = Schemas['Needle']
export type Technique = Schemas['Technique']
export type Irrigant = Schemas['Irrigant']
export type Asked = Schemas['AskedGivenRequest']
export type Choices = Schemas['ChoicesRequest']
export type CanalChoice = Schemas['CanalChoiceRequest']

export type Plan = Schemas['Plan']
export type CanalPlan = Schemas['CanalPlan']
export type InstrumentName = Schemas['InstrumentName']
export type StopRow = Schemas['StopRow']
export type Caution = Schemas['Caution']
export type RowUsed = Schemas['RowUsed']
export type Do = Schemas['Do']

export type VersionListed = Schemas['VersionListed']
export type VersionShown = Schemas['VersionShown']
export type NewReview = Schemas['ReviewGivenRequest']
export type Review = Schemas['ReviewShown']
export type PlanChanges = Schemas['PlanChanges']
export type CanalChanges = Schemas['CanalChanges']
export type Change = Schemas['Change']
export type Waiting = Schemas['WaitingShown']
