/** Something the caller must put right: exit code 2. */
export class BadUse extends Error {
  constructor(
    message: string,
    readonly help?: string,
  ) {
    super(message);
  }
}
