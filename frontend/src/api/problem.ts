export interface FieldProblem {
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

/** The server refused and says why (RFC 9457). */
export class Refused extends Error {
  readonly status: number
  readonly code: string
  readonly fields: readonly FieldProblem[]

  constructor(status: number, body: ProblemBody) {
    super(body.detail || body.title || `The server answered ${status}.`)
    this.name = 'Refused'
    this.status = status
    this.code = body.type?.split(':').at(-1) ?? String(status)
    this.fields = body.errors ?? []
  }

  /** The sentence for the field at a JSON pointer, or below it. */
  at(pointer: string): string | undefined {
    return this.fields.find((f) => f.pointer === pointer || f.pointer.startsWith(`${pointer}/`))?.detail
  }

  /** Sentences that belong to none of the given fields, and the whole where no field is named. */
  besides(pointers: readonly string[]): string[] {
    const others = this.fields.filter((f) => !pointers.some((p) => f.pointer === p || f.pointer.startsWith(`${p}/`)))
    return this.fields.length ? others.map((f) => f.detail) : [this.message]
  }
}

/** No answer came: no connection, or the server is down. Whether it was received is not known. */
export class Unreachable extends Error {
  constructor() {
    super('No answer from the server.')
    this.name = 'Unreachable'
  }
}

export function asRefusal(response: Response, body: unknown): Refused {
  const known = typeof body === 'object' && body !== null ? (body as ProblemBody) : {}
  return new Refused(response.status, known)
}
