/** What the server says against the value of one field. */
export type FieldFault = { field: string; description: string };

/** What went wrong with one request, in words a person can use. */
export class Problem extends Error {
  constructor(
    /** HTTP status; 0 when no answer came. */
    readonly status: number,
    message: string,
    /** Id under which the server logged it. */
    readonly requestId: string,
    /** Faults of single fields, each as "field: what to do". */
    readonly faults: string[] = [],
    /** Stable reason in capitals, e.g. "ETAG_MISMATCH". */
    readonly reason = '',
    /** The same faults by field, those that the message says too included. */
    readonly fields: FieldFault[] = [],
  ) {
    super(message);
  }

  /** Somebody else changed the record meanwhile. */
  get isConflict(): boolean {
    return this.reason === 'ETAG_MISMATCH';
  }

  /** No session, or it ended. */
  get isSignedOut(): boolean {
    return this.status === 401;
  }

  /** The caller may not do this. */
  get isForbidden(): boolean {
    return this.status === 403;
  }

  /** No server could be reached. */
  get isOffline(): boolean {
    return this.status === 0;
  }
}

/** Body of every refusal, as the club's HTTP edge writes it. */
export type RefusalBody = {
  code?: string;
  reason?: string;
  message?: string;
  fieldViolations?: { field?: string; description?: string }[];
  requestId?: string;
};

/** Reads a refused answer; the server's own sentence comes first, and no fault is said twice. */
export function problemFrom(
  status: number,
  body: RefusalBody | undefined,
  requestId: string,
  fallback: string,
): Problem {
  const text = body?.message?.trim() ? body.message.trim() : fallback;
  const fields = (body?.fieldViolations ?? [])
    .filter((v) => v.description)
    .map((v) => ({ field: v.field ?? '', description: v.description ?? '' }));
  const faults = fields
    .filter((f) => !text.includes(f.description))
    .map((f) => `${f.field}: ${f.description}`);
  return new Problem(status, text, requestId || (body?.requestId ?? ''), faults, body?.reason ?? '', fields);
}
