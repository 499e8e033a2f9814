// What saving throws where it is not the system's own error: files that were not saved, or not all of them.

/** A file that is not written although the system might let us, or that the system refuses before anything is done. */
export class NotSaved extends Error {
  /** As whoever wanted it saved calls it. */
  readonly path: string;

  constructor(path: string, because: string) {
    super(because);
    this.path = path;
  }
}

/** The file holds something else than it held when it was read: saving over it would lose what somebody wrote. */
export class ChangedMeanwhile extends NotSaved {}

/** The system failed between one file and the next: these are in their places already. */
export class PartlySaved extends Error {
  readonly saved: readonly string[];
  override readonly cause: unknown;

  constructor(saved: readonly string[], cause: unknown) {
    super("Only some of the files were saved.");
    this.saved = saved;
    this.cause = cause;
  }
}
