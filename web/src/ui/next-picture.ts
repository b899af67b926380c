/**
 * Once the next picture is on the screen, so that work which shows nothing holds none up. A page that
 * is out of sight draws none: after so many milliseconds it is not waited for any more.
 */
export function nextPicture(patience: number): Promise<void> {
  return new Promise((resolve) => {
    // A task after the frame: by then it is on the screen.
    requestAnimationFrame(() => setTimeout(resolve));
    setTimeout(resolve, patience);
  });
}
