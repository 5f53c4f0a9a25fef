/**
 * Returns a function that starts the task, but never twice at once: asked for while the task runs, it runs once more
 * afterwards, however often it was asked for. The task must not reject.
 */
export function oneAtATime(task: () => Promise<void>): () => void {
  let running = false;
  let again = false;
  const run = async () => {
    running = true;
    do {
      again = false;
      await task();
    } while (again);
    running = false;
  };
  return () => {
    if (running) again = true;
    else void run();
  };
}
