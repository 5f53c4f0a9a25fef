/** Tells the editor something that it does not answer. One that has gone away needs no telling, and that is no fault. */
export function tell(send: () => unknown): void {
  try {
    Promise.resolve(send()).catch(() => undefined);
  } catch {
    // The connection is closed.
  }
}
