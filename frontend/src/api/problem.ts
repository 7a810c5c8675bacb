interface FieldProblem {
  readonly pointer: string
  readonly code: string
  readonly detail: string
}

interface ProblemBody {
  readonly type?: string
  readonly title?: string
  readonly detail?: string
  readonly errors?: readonly FieldProblem[]
}

const OTHER = 'other-person'

/** The server's code while it works for others. */
const BUSY = 'busy'
const USUAL_WAIT_S = 5

export const MEDIA_TYPE = 'application/problem+json'
const PREFIX = '/api/v1/problems/'

/** The code of a problem document of the server's own; undefined for anything else. */
export function codeIn(text: string): string | undefined {
  try {
    const { type } = JSON.parse(text) as ProblemBody
    return type?.startsWith(PREFIX) ? type.slice(PREFIX.length) : undefined
  } catch {
    return undefined
  }
}

/** The server refused and says why (RFC 9457). */
export class Refused extends Error {
  readonly status: number
  readonly code: string
  readonly fields: readonly FieldProblem[]
  /** How long to wait where the server only works for others and did nothing yet; undefined for any other refusal. */
  readonly againMs: number | undefined

  constructor(status: number, body: ProblemBody, waitS = Number.NaN) {
    super(
      body.detail ||
        body.title ||
        `The server answered ${status}. What you typed is still here: try again in a moment.`,
    )
    this.name = 'Refused'
    this.status = status
    this.code = body.type?.split('/').at(-1) ?? String(status)
    this.fields = body.errors ?? []
    this.againMs = this.code === BUSY ? 1000 * (Number.isFinite(waitS) ? waitS : USUAL_WAIT_S) : undefined
  }

  /** The server will not take it however often it is sent. */
  get forGood(): boolean {
    return this.status >= 400 && this.status < 500 && ![401, 408, 429].includes(this.status) && this.code !== OTHER
  }

  /** Somebody else has signed in on this phone, in another tab. */
  get otherPerson(): boolean {
    return this.code === OTHER
  }

  /** The sentence for a field by its name or its path (`wall.thickness_mm`), wherever the pointer finds it; also for what lies below the field. */
  at(field: string): string | undefined {
    return this.fields.find((f) => names(f.pointer, field))?.detail
  }

  /** Sentences that belong to none of the fields on the screen, and the whole where no field is named. */
  besides(fields: readonly string[]): string[] {
    if (this.fields.length === 0) return [this.message]
    return this.fields.filter((f) => !fields.some((field) => names(f.pointer, field))).map((f) => f.detail)
  }
}

// Pointers are URI fragments (RFC 6901, 6): `#/reading/tooth_mm`.
const names = (pointer: string, field: string) => `${pointer}/`.includes(`/${field.replaceAll('.', '/')}/`)

/**
 * No answer of the server's own came: no connection, the server is down, or something in between answered. Whether it was
 * received is not known.
 */
export class Unreachable extends Error {
  constructor() {
    super('No answer from the server.')
    this.name = 'Unreachable'
  }
}

export function asRefusal(response: Response, body: unknown): Refused {
  const known = typeof body === 'object' && body !== null ? (body as ProblemBody) : {}
  return new Refused(response.status, known, Number(response.headers.get('Retry-After') ?? Number.NaN))
}
