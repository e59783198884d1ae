/** Whether a program of that number is at work on this machine, this one too. */
export function isRunning(processId: number): boolean {
  try {
    process.kill(processId, 0);
    return true;
  } catch (trouble) {
    return (trouble as NodeJS.ErrnoException).code === 'EPERM';
  }
}
