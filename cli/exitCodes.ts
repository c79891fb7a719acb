/** How the command ends, for scripts. Documented in `--help` and in the README. */
export const exitCodes = {
  done: 0,
  wrongInput: 1,
  wrongUse: 2,
  failedReplay: 3,
  cannotReadOrWrite: 4,
  outOfMemory: 5,
  /** 128 + SIGINT, as shells report it. */
  interrupted: 130,
} as const;

export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];

/** The part of `--help` that explains the exit codes. */
export const exitCodeHelp = `
Exit codes (after all but 0 nothing is written):
  0    done, every paper is written
  1    something in an order, a library, a list or a booking is wrong
  2    the command was not understood
  3    a plan did not pass its replay, or the program has a fault
  4    a file or folder cannot be read or written
  5    memory ran out, or a thread of the search was ended from outside
  130  interrupted twice
`;
