// Exit statuses of the program, after the sysexits convention of BSD (from memory).

export const status = {
  allMade: 0,
  someHeldOrRefused: 1,
  usage: 64,
  badData: 65,
  noInput: 66,
  ourFault: 70,
  cannotWrite: 73,
} as const;
export type Status = (typeof status)[keyof typeof status];

/** Ends a command early with a status and sentences for the operator. */
export class Stop extends Error {
  constructor(
    readonly status: Status,
    readonly sentences: readonly string[],
  ) {
    super('stopped');
  }
}
