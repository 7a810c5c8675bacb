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
  lengths: { reference_set: string; root: string | null; mean_mm: number; low_mm: number | null; high_mm: number | null }[]
  crown_mm: number | null
  main_canals: { root: string; canal: string; reason: string; source: string; know: string }[]
}
