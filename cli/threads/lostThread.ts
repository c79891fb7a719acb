/** What a thread can lack: memory, or its life, taken by somebody else. */
export type ThreadLoss = 'memory' | 'ended';

/** A thread is gone without an answer, through no fault of the program. */
export class LostThread extends Error {
  override readonly name = 'LostThread';
  readonly loss: ThreadLoss;

  constructor(loss: ThreadLoss, options?: ErrorOptions) {
    super(loss === 'memory' ? 'memory ran out' : 'a thread was ended from outside', options);
    this.loss = loss;
  }
}

/** What engines say where memory cannot be had: of a thread, of a buffer, of the solver's own memory. */
const OUT_OF_MEMORY =
  /out of memory|could not allocate memory|allocation failed|unable to grow|aborted\(oom|bad_alloc/i;

/** Whether something that was thrown says that memory ran out. */
export function isOutOfMemory(fault: unknown): boolean {
  if (!(fault instanceof Error)) return false;
  return (
    (fault as NodeJS.ErrnoException).code === 'ERR_WORKER_OUT_OF_MEMORY' || OUT_OF_MEMORY.test(fault.message)
  );
}

/** What a thread's error is: its loss where memory ran out, otherwise what `asFault` makes of it. */
export function threadError(error: Error, asFault: (error: Error) => Error): Error {
  return isOutOfMemory(error) ? new LostThread('memory', { cause: error }) : asFault(error);
}
