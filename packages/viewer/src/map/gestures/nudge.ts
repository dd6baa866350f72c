/** The gesture of nudging: Alt with an arrow key on the map moves the selected station along its course. */

const AHEAD: Readonly<Record<string, 1 | -1>> = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 };

/** `steps`: 1, or 10 with Shift; negative towards the start. */
export function listenForNudges(canvas: HTMLCanvasElement, nudge: (steps: number) => void): void {
  canvas.addEventListener('keydown', (event) => {
    const way = AHEAD[event.key];
    if (way === undefined || !event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    nudge(way * (event.shiftKey ? 10 : 1));
  });
}
