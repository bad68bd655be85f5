/** Why a worker does not do what it was asked. */
export type WorkerFailure =
  /** Its script could not be fetched or started. */
  | { readonly kind: 'missing' }
  /** Something was thrown in it, or what it sent could not be read. */
  | { readonly kind: 'broken'; readonly message: string }
  /** It has sent nothing for `PATIENCE`. */
  | { readonly kind: 'silent' };

/** For people: a sentence without its full stop, after `The sheets could not be laid out:`. */
export function failureText(failure: WorkerFailure): string {
  switch (failure.kind) {
    case 'missing':
      return 'the part of the program that does it could not be fetched or started; there may be no network just now';
    case 'broken':
      return `the part of the program that does it made a mistake (${failure.message})`;
    case 'silent':
      return 'the part of the program that does it has stopped answering';
  }
}

export const broken = (error: unknown): WorkerFailure => ({
  kind: 'broken',
  message: error instanceof Error ? error.message : String(error),
});

/** What an error event of a worker means: where no script ran, none has a message. */
export const failureOf = (event: Event): WorkerFailure =>
  'message' in event && typeof event.message === 'string' && event.message !== ''
    ? { kind: 'broken', message: event.message.replace(/^Uncaught (Error: )?/, '') }
    : { kind: 'missing' };
