/** Moves the sheet by so many pixels to the right and down, and tells whether it moved. */
type Scroll = (right: number, down: number) => { readonly right: boolean; readonly down: boolean };

// A finger is never quite still.
const stillWithin = 8;
// Held so long, a finger marks cells as a mouse does.
const longPress = 450;
// At the edges are headings and bars to scroll with, which are dragged themselves.
const [headings, bars] = [{ x: 46, y: 20 }, 14];
const slowing = 0.94;
// The second of two taps never meets the pixel of the first, and may meet the next cell.
const [twiceWithin, twiceNear] = [500, 24];

/** What a finger needs to know of the cells that it taps. */
export interface Tapped {
  readonly selected: () => string;
  readonly isTypedInto: () => boolean;
  /** Opens the selected cell for typing. */
  readonly onTwice: () => void;
}

interface Finger {
  readonly id: number;
  readonly from: PointerEvent;
  readonly canvas: HTMLElement;
  readonly hold: ReturnType<typeof setTimeout>;
  x: number;
  y: number;
  at: number;
  moves: boolean;
  marks: boolean;
  speed: { x: number; y: number };
}

/**
 * A finger that moves over the sheet scrolls it, and the page where the sheet is at its end; one that taps selects a cell,
 * one that taps twice opens it for typing, and one that is held marks cells. Of its own the embedded spreadsheet takes
 * every finger for a mouse that marks cells, nothing but the bars at its edges scrolls, and two taps must meet within two
 * pixels.
 */
export function touchTheSheet(holder: HTMLElement, scroll: Scroll, tapped: Tapped): () => void {
  let finger: Finger | undefined;
  let before: { readonly from: PointerEvent; readonly cell: string } | undefined;
  let gliding = 0;
  let passes = false;

  /** Lets the spreadsheet have what the finger did. */
  const pass = (type: string, { canvas, from }: Finger, { clientX, clientY }: PointerEvent): void => {
    const { pointerId, isPrimary } = from;
    const [button, buttons] = [type === "pointermove" ? -1 : 0, type === "pointerup" ? 0 : 1];
    const place = { clientX, clientY, pointerId, isPrimary, button, buttons };
    passes = true;
    canvas.dispatchEvent(new PointerEvent(type, { ...place, pointerType: "mouse", bubbles: true, cancelable: true }));
    passes = false;
  };
  const move = (right: number, down: number): boolean => {
    const moved = scroll(right, down);
    const before = scrollY;
    if (!moved.down) scrollBy({ top: down, behavior: "instant" });
    return moved.right || moved.down || scrollY !== before;
  };
  const glide = (speed: { x: number; y: number }): void => {
    const further = { x: speed.x * slowing, y: speed.y * slowing };
    if (Math.hypot(further.x, further.y) < 0.5 || !move(further.x, further.y)) return;
    gliding = requestAnimationFrame(() => glide(further));
  };
  const tap = (ended: Finger, event: PointerEvent): void => {
    // A link that was tapped has led elsewhere, and there is nothing to be opened.
    const isSecond =
      !tapped.isTypedInto() && before?.cell === tapped.selected() && isSoonAndNear(before.from, ended.from);
    before = undefined;
    if (isSecond) {
      tapped.onTwice();
      return;
    }
    pass("pointerdown", ended, event);
    before = { from: ended.from, cell: tapped.selected() };
    pass("pointerup", ended, event);
  };

  const follow: Readonly<Record<string, (event: PointerEvent) => void>> = {
    pointerdown(event) {
      cancelAnimationFrame(gliding);
      const canvas = event.target as HTMLElement;
      const { left, top, right, bottom } = canvas.getBoundingClientRect();
      const isInCells =
        event.clientX > left + headings.x &&
        event.clientY > top + headings.y &&
        event.clientX < right - bars &&
        event.clientY < bottom - bars;
      if (!isInCells || finger) return;
      const begun: Finger = {
        id: event.pointerId,
        from: event,
        canvas,
        hold: setTimeout(() => {
          begun.marks = true;
          pass("pointerdown", begun, event);
        }, longPress),
        x: event.clientX,
        y: event.clientY,
        at: event.timeStamp,
        moves: false,
        marks: false,
        speed: { x: 0, y: 0 },
      };
      finger = begun;
      canvas.setPointerCapture?.(event.pointerId);
      event.stopPropagation();
    },
    pointermove(event) {
      if (finger?.id !== event.pointerId) return;
      event.stopPropagation();
      if (finger.marks) return pass("pointermove", finger, event);
      const [right, down] = [finger.x - event.clientX, finger.y - event.clientY];
      if (!finger.moves && Math.hypot(right, down) < stillWithin) return;
      clearTimeout(finger.hold);
      const frames = Math.max(1, (event.timeStamp - finger.at) / 16);
      Object.assign(finger, { moves: true, x: event.clientX, y: event.clientY, at: event.timeStamp });
      finger.speed = { x: right / frames, y: down / frames };
      move(right, down);
    },
    pointerup(event) {
      if (finger?.id !== event.pointerId) return;
      const ended = finger;
      finger = undefined;
      clearTimeout(ended.hold);
      event.stopPropagation();
      const rests = event.timeStamp - ended.at > 80 || matchMedia("(prefers-reduced-motion: reduce)").matches;
      if (ended.moves) return rests ? undefined : glide(ended.speed);
      if (ended.marks) pass("pointerup", ended, event);
      else tap(ended, event);
    },
    pointercancel(event) {
      if (finger?.id !== event.pointerId) return;
      clearTimeout(finger.hold);
      if (finger.marks) pass("pointerup", finger, event);
      finger = undefined;
    },
  };
  const heard = (event: Event): void => {
    const pointer = event as PointerEvent;
    if (passes || pointer.pointerType !== "touch" || !(pointer.target instanceof HTMLCanvasElement)) return;
    follow[event.type]?.(pointer);
  };
  for (const type of Object.keys(follow)) holder.addEventListener(type, heard, { capture: true });
  return () => {
    cancelAnimationFrame(gliding);
    for (const type of Object.keys(follow)) holder.removeEventListener(type, heard, { capture: true });
  };
}

const isSoonAndNear = (first: PointerEvent, second: PointerEvent): boolean =>
  second.timeStamp - first.timeStamp < twiceWithin &&
  Math.hypot(second.clientX - first.clientX, second.clientY - first.clientY) < twiceNear;
