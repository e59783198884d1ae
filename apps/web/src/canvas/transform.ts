const CALL = /(\w+)\(([^)]*)\)/g;

interface Movable {
  translate(x: number, y: number): void;
  scale(x: number, y: number): void;
  rotate(angle: number): void;
  transform(a: number, b: number, c: number, d: number, e: number, f: number): void;
}

/** Moves what a pen draws next as an SVG `transform` says: `translate(4 8) rotate(-90)`. */
export function moved(pen: Movable, transform: string): void {
  for (const [whole, name, inner = ''] of transform.matchAll(CALL)) {
    const given = inner
      .trim()
      .split(/[\s,]+/)
      .map(Number);
    const [a = 0, b, c, d = 0, e = 0, f = 0] = given;
    if (name === 'translate') pen.translate(a, b ?? 0);
    else if (name === 'scale') pen.scale(a, b ?? a);
    else if (name === 'rotate') {
      pen.translate(b ?? 0, c ?? 0);
      pen.rotate((a * Math.PI) / 180);
      pen.translate(-(b ?? 0), -(c ?? 0));
    } else if (name === 'matrix') pen.transform(a, b ?? 0, c ?? 0, d, e, f);
    else throw new Error(`A drawing has the transform "${whole}", which the canvas cannot paint.`);
  }
}
