export type Severity = 'note' | 'caution' | 'stop'
export type Target = 'to_length' | 'to_resistance'
export interface Caution {
  code: string
  severity: Severity
  canal: string | null
  says: string
  do: string
  row: string
  value: number | null
  limit: number | null
  unit: string | null
}
export interface ToothNames {
  iso: string
  universal: string
  palmer: string
  palmer_glyph: string
  name: string
}
export interface InstrumentName {
  key: string
  name: string
  size: number
  taper: number
  motion: string
  colour: string | null
  setting_says: string
}
export interface Length {
  state: 'missing' | 'estimated' | 'settled' | 'to_settle' | 'unsettled'
  working_length_mm: number | null
  stop_mm: number | null
  estimate_mm: number | null
  rests_on: string[]
  apart_mm: number | null
  readings: { method: string; working_length_mm: number | null; counts: boolean; why: string }[]
  what_to_do: string
}
export interface Do {
  kind: 'do'
  id: string
  action: string
  phase: string
  exits: Record<string, string>
  instrument: string | null
  stop_um: number | null
  target: Target | null
  shorter_than: { node: string; less_um: number } | null
  hold_point: string | null
  irrigant: string | null
  volume_ml: number | null
  needle_at_most_um: number | null
  say: string
}
export interface Ask {
  kind: 'ask'
  id: string
  phase: string
  question: { test: string; nodes?: string[]; node?: string; n?: number; least_um?: number }
  exits: Record<string, string>
}
export interface End {
  kind: 'end'
  id: string
  outcome: string
  say: string
}
export interface RunSheet {
  canal: string
  start: string
  nodes: Record<string, Do | Ask | End>
  form: number
}
export interface CanalPlan {
  canal: string
  root: string
  reference_point: string
  length: Length
  end_mm: number | null
  junction_mm: number | null
  joins: string | null
  provisional: boolean
  final_size: number
  final_taper: number
  size_range: { least: number; most: number; proposed: number; reasons: string[] }
  outline: { from_reference_mm: number; diameter_mm: number }[]
  needle: { ceiling_mm: number; now: { after: string; at_most_mm: number }[] } | null
  withheld: { from_phase: string; code: string; says: string }[]
  run_sheet: RunSheet
  expected_path: string[]
}
export interface StopRow {
  instrument: InstrumentName
  phase: string
  stops: { canal: string; stop_mm: number; target: Target }[]
}
export interface TrayOrder {
  changes: number
  steps: { phase: string; instrument: string; canals: string[] }[]
}
export interface RowUsed {
  key: string
  value: number
  unit: string
  source: string
  know: string
  programme: boolean
}
export interface Plan {
  tooth: ToothNames
  setting: string
  technique: string
  kit: string
  irrigant: string
  canals: CanalPlan[]
  stop_table: StopRow[]
  tray: TrayOrder
  one_at_a_time: TrayOrder
  tray_list: { instrument: InstrumentName; canals: string[] }[]
  cautions: Caution[]
  rows_used: RowUsed[]
  planner_version: string
  data_version: string
  notice: string
  form: number
}

export interface Person {
  id: string
  username: string
  display_name: string
}
export type Role = 'student' | 'supervisor' | 'coordinator'
export interface Session {
  person: Person
  memberships: { programme: { id: string; name: string }; role: Role }[]
}
export type Notation = 'iso_3950' | 'universal' | 'palmer'
export interface ToothName {
  notation: Notation
  designation: string
}
export interface Prevalence {
  share: number | null
  low_share: number | null
  high_share: number | null
  says: string
  source: string
  year: number | null
  know: string
}
export interface CanalOnOffer {
  name: string
  root: string
  kind: string
  reference_point: string | null
  other_reference_points: string[]
  studies: Prevalence[]
  source: string
  know: string
}
export interface Tooth extends ToothNames {
  primary: boolean
  canals: CanalOnOffer[]
  look_for: CanalOnOffer[]
  notes: Prevalence[]
  lengths: {
    reference_set: string
    root: string | null
    mean_mm: number
    low_mm: number | null
    high_mm: number | null
  }[]
  crown_mm: number | null
  main_canals: { root: string; canal: string; reason: string; source: string; know: string }[]
}

export type Reading =
  | { method: 'pre_operative_image'; tooth_mm: number; reference_point: string; after_flaring?: boolean }
  | {
      method: 'ratio'
      instrument_mm: number
      instrument_on_image_mm: number
      tooth_on_image_mm: number
      reference_point: string
      after_flaring?: boolean
    }
  | {
      method: 'confirming_image'
      set_mm: number
      tip_short_mm: number
      reference_point: string
      after_flaring?: boolean
    }
  | {
      method: 'apex_locator'
      read_mm: number
      repeat_mm: number
      mark: 'apex' | 'constriction'
      stable?: boolean
      reference_point: string
      after_flaring?: boolean
    }
  | { method: 'direct_sight'; seen_mm: number; reference_point: string; after_flaring?: boolean }
export type Setting = 'block' | 'extracted' | 'clinic'
export type Pattern = '1' | 'separate' | '2-1' | '1-2' | '2-1-2' | '1-2-1' | 'unknown'
export type Finding = 'expected' | 'found' | 'searched_not_found'
export type Resorption = 'none' | 'bone' | 'bone_and_root'
export type VersionState = 'draft' | 'waiting' | 'approved' | 'returned' | 'superseded'

export interface Kit {
  id: string
  name: string
  instruments: { size: number; taper: number; motion: string; use: string; length_mm: number }[]
  needles: Needle[]
}
export interface Needle {
  gauge: number
  tip: 'open' | 'side_vented'
}
export interface Technique {
  key: string
  name: string
  says: string
}
export interface CanalChoice {
  canal: string
  final_size?: number | null
  reason?: string
}
export interface Choices {
  needle: Needle
  irrigant?: string
  final_rinse?: string[]
  series_taper?: number | null
  glide_path_to_size?: number | null
  canals?: CanalChoice[]
}
export interface PlanAsked {
  kit: string
  technique: string
  choices: Choices
}
/** Where the case's plan stands. */
export interface PlanStanding {
  state: 'none' | 'draft' | 'waiting' | 'approved' | 'returned' | 'void'
  version: string | null
  number: number | null
  says: string
}
export interface CaseSummary {
  id: string
  patient_alias: string
  tooth: ToothNames
  setting: Setting
  student: Person
  standing: PlanStanding
  created_at: string
}
export interface StoredReading {
  id: string
  number: number
  reading: Reading
  actor: string
  at: string
}
export interface CaseCanal {
  id: string
  name: string
  root: string
  reference_point: string
  finding: Finding
  resorption: Resorption
  curvature_deg: number | null
  curve_start_mm: number | null
  orifice_mm: number | null
  apex_mm: number | null
  readings: StoredReading[]
  junctions: { id: string; number: number; from_terminus_mm: number; method: string; at: string }[]
  length: Length
}
export interface CaseRoot {
  name: string
  pattern: Pattern
  main_canal: string | null
}
export interface CaseDetail extends CaseSummary {
  programme: { id: string; name: string }
  isolated: boolean
  root_filled: boolean
  perforation: boolean
  anatomy: string
  revision: number
  canals: CaseCanal[]
  roots: CaseRoot[]
}
export interface Review {
  id: string
  decision: 'approved' | 'returned'
  note: string
  supervisor: Person
  at: string
  remarks: { canal: string; text: string }[]
}
export interface Version {
  id: string
  case: string
  number: number
  state: VersionState
  hash: string
  plan: Plan
  choices: PlanAsked
  reviews: Review[]
  submitted_at: string | null
}
